package dev.lampwright.config;

import dev.lampwright.look.Zone;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The section {@code [zones]}. */
final class ZonesSection {
    /** The zone that is always the whole strip. */
    static final String STRIP = "strip";

    /** Runs of pixels, by the user's names. */
    static final Section SECTION = Section.of(
            "zones",
            "runs of the strip; pixel 0 is nearest the controller",
            Key.own("NAME", "`0-9`, backwards `29-20`, joined `0-9 + 20-29`, folded `0-59 mirrored`")
                    .without("`bed` and `nozzle` are halves, `job` is the whole strip")
                    .example("\"0-9\"", "the first and the last pixel"));

    private static final String RUN = "(\\d{1,5})(?:\\s*-\\s*(\\d{1,5}))?";
    private static final Pattern ONE_RUN = Pattern.compile(RUN);
    private static final Pattern WHOLE = Pattern.compile("(" + RUN + "(?:\\s*\\+\\s*" + RUN + ")*)(\\s+mirrored)?");
    private static final String WANTED =
            "give the first and the last pixel, for instance \"0-9\", or \"9-0\" for the other"
                    + " direction, \"0-9 + 20-29\" or \"0-59 mirrored\"";

    private ZonesSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param pixels pixels of the strip, 1 or more
     * @param taken names of zones that stand elsewhere in the file
     * @return the whole strip, the zones of the file, in its order, and those of {@link #usual} that it leaves out; the whole strip
     *     also stands in for what is wrong
     */
    static Map<String, Zone> read(Table table, int pixels, Collection<String> taken) {
        Zone strip = Zone.run(0, pixels - 1);
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put(STRIP, strip);
        for (String name : table.keys()) {
            Optional<Zone> zone = table.text(name, WANTED).flatMap(text -> zone(table, name, text, pixels));
            zones.put(name, zone.orElse(strip));
        }
        usual(pixels).forEach((name, zone) -> {
            if (!table.has(name) && !taken.contains(name)) {
                zones.put(name, table.defaultOf(name, zone, zone.toString()));
            }
        });
        noteTaken(table, STRIP, "is always the whole strip");
        noteTaken(table, DimmersSection.PLAIN, "is always what plain colour strips there are");
        taken.forEach(name -> noteTaken(table, name, "is the zone of the plain colour strip dimmers." + name));
        return zones;
    }

    private static void noteTaken(Table table, String name, String why) {
        if (table.has(name)) {
            table.mistake(name, why, "choose another name");
        }
    }

    /**
     * The zones that are always there: {@code bed} is the first half of the strip, {@code nozzle} the second half, running
     * backwards from the far end, and {@code job} is the whole strip. A single pixel is all three.
     */
    private static Map<String, Zone> usual(int pixels) {
        int half = (pixels + 1) / 2;
        int last = pixels - 1;
        Map<String, Zone> usual = new LinkedHashMap<>();
        usual.put("bed", Zone.run(0, half - 1));
        usual.put("nozzle", Zone.run(last, Math.min(half, last)));
        usual.put("job", Zone.run(0, last));
        return usual;
    }

    private static Optional<Zone> zone(Table table, String name, String text, int pixels) {
        Matcher whole = WHOLE.matcher(text.strip());
        if (!whole.matches()) {
            table.mistake(name, "is " + Wording.quoted(text), WANTED);
            return Optional.empty();
        }
        boolean mirrored = whole.group(whole.groupCount()) != null;
        return table.attempt(name, WANTED, () -> {
            Zone zone = joined(whole.group(1), text, pixels);
            return mirrored ? zone.mirrored() : zone;
        });
    }

    private static Zone joined(String runs, String text, int pixels) {
        Zone zone = Zone.empty();
        Matcher run = ONE_RUN.matcher(runs);
        while (run.find()) {
            int first = Integer.parseInt(run.group(1));
            int last = run.group(2) == null ? first : Integer.parseInt(run.group(2));
            if (Math.max(first, last) >= pixels) {
                throw new IllegalArgumentException("is " + Wording.quoted(text)
                        + ", past the end of the strip; stay within 0-" + (pixels - 1) + ", or mend strip.pixels");
            }
            zone = zone.then(Zone.run(first, last));
        }
        return zone;
    }
}
