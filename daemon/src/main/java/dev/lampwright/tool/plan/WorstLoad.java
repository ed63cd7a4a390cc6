package dev.lampwright.tool.plan;

import java.util.Comparator;
import java.util.stream.IntStream;

/** The load within a ceiling that pulls one place of the strip lowest: light goes where it costs that place most. */
final class WorstLoad {
    private WorstLoad() {}

    /**
     * Shares a current out. No other sharing within the same limits takes more volts from that place, as the drop is a sum of the
     * currents, each times its resistance.
     *
     * @param ohms what each pixel's current costs the place, as {@link Ladder#ohmsTo} gives it
     * @param dark least that each pixel draws, in A
     * @param full most that each pixel draws, in A
     * @param ceiling most that all draw together, in A
     * @return what each pixel draws, in A; at least {@code dark}, even over the ceiling
     */
    static double[] on(double[] ohms, double dark, double full, double ceiling) {
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
