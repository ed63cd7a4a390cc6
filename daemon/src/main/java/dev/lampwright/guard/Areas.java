package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The lights that are judged together, in addition to each light and each run of pixels: the whole strip, each zone, and all the light in
 * the room.
 */
final class Areas {
    /**
     * Light per watt of colour pixels and of white lamps, 40 and 100 lm/W. Assumed from what manufacturers of such strips state; from
     * memory. It only decides how much a lamp and the strip count relative to each other, since both are also judged separately.
     */
    private static final int COLOUR_LIGHT_PER_WATT = 2;

    private static final int WHITE_LIGHT_PER_WATT = 5;

    private final Setup setup;
    private final Fitting fitting;
    private final List<Double> volts;
    private final int depth;

    private Areas(Setup setup, Fitting fitting, List<Double> volts, int depth) {
        this.setup = setup;
        this.fitting = fitting;
        this.volts = volts;
        this.depth = depth;
    }

    /**
     * The areas of the fitted lights.
     *
     * @param setup the controller's set-up
     * @param fitting what looks are made for
     * @param volts voltage of each supply, by its index
     * @param depth how many transitions of each are remembered, see {@link Traces}
     * @return areas of two lights or more, each set of lights once, the smallest first
     */
    static List<Area> of(Setup setup, Fitting fitting, List<Double> volts, int depth) {
        return new Areas(setup, fitting, volts, depth).all();
    }

    private List<Area> all() {
        List<int[]> sets = new ArrayList<>();
        add(sets, IntStream.range(0, fitting.pixels()));
        fitting.zones().values().forEach(zone -> add(sets, lights(zone)));
        sets.sort(Comparator.comparingInt(lights -> lights.length));
        List<Area> areas = new ArrayList<>();
        sets.forEach(lights -> areas.add(Area.ofEqual(lights, depth)));
        if (!fitting.dimmerNames().isEmpty()) {
            areas.add(room());
        }
        return areas;
    }

    /** Everything together, each light weighted by its light output, estimated as its power times the efficacy of its kind. */
    private Area room() {
        List<String> names = fitting.dimmerNames();
        long[] weights = new long[fitting.pixels() + names.size()];
        double pixel = setup.channelMicroamps().stream()
                        .limit(3)
                        .mapToInt(Integer::intValue)
                        .sum()
                / 1000.0;
        Arrays.fill(weights, 0, fitting.pixels(), weight(pixel, setup.stripSupply(), COLOUR_LIGHT_PER_WATT));
        for (int i = 0; i < fitting.dimmers().size(); i++) {
            Fitting.DimmerUse use = fitting.dimmers().get(i);
            Setup.Dimmer dimmer = setup.dimmers().get(i);
            int lightPerWatt = use.isWhite() ? WHITE_LIGHT_PER_WATT : COLOUR_LIGHT_PER_WATT;
            if (use.isUsed()) {
                weights[fitting.pixels() + names.indexOf(use.name())] +=
                        weight(dimmer.fullMilliamps(), dimmer.supply(), lightPerWatt);
            }
        }
        return new Area(IntStream.range(0, weights.length).toArray(), weights, depth);
    }

    private long weight(double milliamps, int supply, int lightPerWatt) {
        double volt = supply < volts.size() ? volts.get(supply) : GuardSettings.USUAL_VOLTS;
        return Math.max(1, Math.round(milliamps * volt * lightPerWatt));
    }

    private IntStream lights(Zone zone) {
        return IntStream.range(0, zone.pixelCount()).map(zone::pixel).map(this::light);
    }

    /** A pixel beyond the strip is a plain colour strip. */
    private int light(int pixel) {
        if (pixel < fitting.pixels()) {
            return pixel;
        }
        String plain = fitting.dimmers().stream()
                .filter(use -> use.colourPixel() == pixel)
                .map(Fitting.DimmerUse::name)
                .findFirst()
                .orElseThrow();
        return fitting.pixels() + fitting.dimmerNames().indexOf(plain);
    }

    private static void add(List<int[]> all, IntStream lights) {
        BitSet set = new BitSet();
        lights.forEach(set::set);
        int[] sorted = set.stream().toArray();
        boolean known = all.stream().anyMatch(other -> Arrays.equals(other, sorted));
        if (sorted.length > 1 && !known) {
            all.add(sorted);
        }
    }
}
