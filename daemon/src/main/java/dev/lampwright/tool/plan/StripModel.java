package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Copper;
import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** The strip with its wires, and the load that it carries. */
final class StripModel {
    /** How many places along a long strip are tried to find the worst one. */
    private static final int PLACES = 100;

    private final PlannedLights rig;
    private final Loads loads;
    private final double ceiling;

    StripModel(PlannedLights rig) {
        this.rig = rig;
        loads = new Loads(rig);
        ceiling = loads.ceiling(rig.setup().stripSupply());
    }

    /** The ladder as it is wired. */
    ResistorLadder wired() {
        Wiring.Strip strip = rig.wiring().strip();
        return ladder(strip.feed().wire(), strip.points());
    }

    /**
     * The ladder with other wires.
     *
     * @param wire size of all wires
     * @param points where they join
     */
    ResistorLadder ladder(Wire wire, List<Wiring.Point> points) {
        double wireC = rig.wiring().wireC();
        Map<Integer, Double> ohms = new LinkedHashMap<>();
        Wiring.Strip strip = rig.wiring().strip();
        double parts = strip.feed().partOhms(FuseRatings.assumed(most() / points.size()));
        points.forEach(point -> ohms.put(point.pixel(), wire.loopOhms(point.metres(), wireC) + parts));
        double segmentOhms = strip.loopOhmsPerMetre() / strip.pixelsPerMetre() * Copper.warmth(wireC);
        return new ResistorLadder(rig.stripSupply().leastVolts(), pixels(), segmentOhms, ohms);
    }

    /** The most that the strip draws under the ceiling, as a mean, in A. */
    private double most() {
        return Math.min(ceiling, pixels() * loads.fullPixel());
    }

    /**
     * The RMS current that pulses can cause at a place, in A.
     *
     * @param shares for each pixel, which share of its current flows through it
     */
    double heat(double[] shares) {
        return rig.wiring().strip().together()
                ? WorstHeat.together(shares, loads.darkPixel(), loads.fullPixel(), ceiling)
                : WorstHeat.apart(shares, loads.darkPixel(), loads.fullPixel(), ceiling);
    }

    /** Every pixel at full white, as if there were no ceiling. */
    double[] white() {
        double[] amps = new double[pixels()];
        Arrays.fill(amps, loads.fullPixel());
        return amps;
    }

    /** All pixels equal, as bright as the ceiling allows. */
    double[] even() {
        double[] amps = new double[pixels()];
        Arrays.fill(amps, Math.max(loads.darkPixel(), Math.min(loads.fullPixel(), ceiling / pixels())));
        return amps;
    }

    /** The load within the ceiling that pulls some pixel lowest, in A per pixel. */
    double[] worst(ResistorLadder ladder) {
        double[] worst = ladder.ohmsTo(0);
        double deepest = -1;
        for (int place : places()) {
            double[] ohms = ladder.ohmsTo(place);
            double drop = mostDrop(ohms);
            if (drop > deepest) {
                deepest = drop;
                worst = ohms;
            }
        }
        return worstOn(worst);
    }

    /** The voltage drop at one place under the load that pulls it lowest, in V. */
    private double mostDrop(double[] ohms) {
        double[] sorted = ohms.clone();
        Arrays.sort(sorted);
        double left = Math.max(0, ceiling - loads.darkPixel() * sorted.length);
        double drop = 0;
        for (int i = sorted.length - 1; i >= 0; i--) {
            double extra = Math.min(left, loads.fullPixel() - loads.darkPixel());
            drop += sorted[i] * (loads.darkPixel() + extra);
            left -= extra;
        }
        return drop;
    }

    /**
     * The most that one wire has to carry, in A.
     *
     * @param ladder the ladder
     * @param pixel where the wire joins
     */
    double mostIn(ResistorLadder ladder, int pixel) {
        return ladder.wireAmps(pixel, ladder.drops(worstOn(ladder.ohmsTo(pixel))));
    }

    /** The lowest voltage that any load within the ceiling causes. */
    double lowest(ResistorLadder ladder) {
        return Arrays.stream(ladder.volts(worst(ladder))).min().orElseThrow();
    }

    /**
     * Whether no load within the ceiling pulls a pixel below a voltage.
     *
     * @param ladder the ladder
     * @param volts V
     */
    boolean reaches(ResistorLadder ladder, double volts) {
        double[] drops = ladder.drops(even());
        int deepest = IntStream.range(0, drops.length).reduce(0, (a, b) -> drops[b] > drops[a] ? b : a);
        return ladder.volts() - mostDrop(ladder.ohmsTo(deepest)) >= volts && lowest(ladder) >= volts;
    }

    private double[] worstOn(double[] ohms) {
        return worstOn(ohms, loads.darkPixel(), loads.fullPixel(), ceiling);
    }

    private int[] places() {
        int places = Math.min(PLACES, pixels());
        return IntStream.range(0, places)
                .map(i -> places == 1 ? 0 : (int) Math.round((double) i * (pixels() - 1) / (places - 1)))
                .toArray();
    }

    private int pixels() {
        return rig.setup().pixels();
    }

    /**
     * The load within a ceiling that pulls one place of the strip lowest: light goes where it costs that place most. No other distribution
     * within the same limits causes a larger drop there, because the drop is the sum of the currents, each times its resistance.
     *
     * @param ohms what each pixel's current costs the place, as returned by {@link ResistorLadder#ohmsTo}
     * @param dark minimum that each pixel draws, in A
     * @param full maximum that each pixel draws, in A
     * @param ceiling maximum that all draw together, in A
     * @return what each pixel draws, in A; at least {@code dark}, even over the ceiling
     */
    static double[] worstOn(double[] ohms, double dark, double full, double ceiling) {
        double[] amps = new double[ohms.length];
        double[] left = {Math.max(0, ceiling - dark * ohms.length)};
        IntStream.range(0, ohms.length)
                .boxed()
                .sorted(Comparator.comparingDouble(pixel -> -ohms[pixel]))
                .forEach(pixel -> {
                    double extra = Math.min(left[0], full - dark);
                    amps[pixel] = dark + extra;
                    left[0] -= extra;
                });
        return amps;
    }
}
