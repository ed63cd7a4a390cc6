package dev.lampwright.tool.picture;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Films for tests. */
final class Films {
    private Films() {}

    /** A strip with the usual zones, and lamps: white ones, or coloured ones if their name starts with that. */
    static Film.Subject subject(int pixels, String... lamps) {
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("strip", Zone.run(0, pixels - 1));
        zones.put("bed", Zone.run(0, pixels / 2));
        zones.put("job", Zone.run(pixels - 1, 0));
        List<Fitting.DimmerUse> dimmers = new ArrayList<>();
        int beyond = pixels;
        for (String name : lamps) {
            if (!name.startsWith("colour")) {
                dimmers.add(Fitting.DimmerUse.white(name));
                continue;
            }
            zones.put(name, Zone.run(beyond, beyond));
            for (int channel = 0; channel < 3; channel++) {
                dimmers.add(new Fitting.DimmerUse(name, beyond, channel));
            }
            beyond++;
        }
        return new Film.Subject("a title", "a note", new Fitting(pixels, zones, dimmers), "GRB");
    }

    /** Shots of random colours. */
    static Film random(int shots, int pixels, long seed, String... lamps) {
        Random random = new Random(seed);
        List<Film.Shot> all = new ArrayList<>();
        for (int i = 0; i < shots; i++) {
            int[] strip = random.ints(pixels, 0, 0x1000000).toArray();
            int[] lit = random.ints(lamps.length, 0, 0x1000000).toArray();
            all.add(new Film.Shot(strip, lit, "state " + i / 3));
        }
        return new Film(subject(pixels, lamps), 10, all);
    }
}
