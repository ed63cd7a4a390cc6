package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Which lights are judged together: the whole strip, each zone, each light on the dimmers, and patches of neighbouring pixels. Patches are
 * there because a mean over a long zone hides a few pixels that flash, and halves that flash in turn; in a patch of eight a single pixel
 * is more than the 10 % that count. How long a patch is, is our own choice.
 */
final class Regions {
    private static final int PATCH = 8;
    private static final int MOST_PATCHES = 64;

    private Regions() {}

    /**
     * The regions of what is fitted.
     *
     * @param fitting what looks are made for
     * @return the lights of each as {@link LightReader} counts them, each set of lights once, the smallest first
     */
    static List<int[]> of(Fitting fitting) {
        List<int[]> all = new ArrayList<>();
        add(all, IntStream.range(0, fitting.pixels()));
        int patch = Math.max(PATCH, (fitting.pixels() + MOST_PATCHES - 1) / MOST_PATCHES);
        for (int first = 0; first < fitting.pixels(); first += patch) {
            add(all, IntStream.range(first, Math.min(first + patch, fitting.pixels())));
        }
        for (int i = 0; i < fitting.dimmerNames().size(); i++) {
            add(all, IntStream.of(fitting.pixels() + i));
        }
        fitting.zones().values().forEach(zone -> add(all, lights(zone, fitting)));
        all.sort(Comparator.comparingInt(lights -> lights.length));
        return all;
    }

    private static IntStream lights(Zone zone, Fitting fitting) {
        return IntStream.range(0, zone.pixelCount()).map(zone::pixel).map(pixel -> light(pixel, fitting));
    }

    /** A pixel beyond the strip is a plain colour strip. */
    private static int light(int pixel, Fitting fitting) {
        Optional<String> plain = fitting.dimmers().stream()
                .filter(use -> use.colourPixel() == pixel)
                .map(Fitting.DimmerUse::name)
                .findFirst();
        return plain.map(name -> fitting.pixels() + fitting.dimmerNames().indexOf(name))
                .orElse(pixel);
    }

    private static void add(List<int[]> all, IntStream lights) {
        int[] sorted = lights.distinct().sorted().toArray();
        boolean known = all.stream().anyMatch(other -> Arrays.equals(other, sorted));
        if (sorted.length > 0 && !known) {
            all.add(sorted);
        }
    }
}
