package dev.lampwright.tool.plan;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The ratings that fuses come in. Source: preferred ratings of IEC 60127, which follow the R10 series of ISO 3 (from memory), from
 * 100 mA on; over 10 A the same series.
 */
final class FuseRatings {
    private static final List<Double> AMPS = List.of(
            0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0,
            10.0, 12.5, 16.0, 20.0);

    /** Share of its rating that a fuse carries all the time without ageing (common practice, no source). */
    static final double STEADY_SHARE = 0.75;

    private FuseRatings() {}

    /**
     * The fuse for a load that never rests: the least that is at least the load ÷ {@link #STEADY_SHARE}.
     *
     * @param loadAmps the load, in A
     * @param bearsAmps what the weakest part behind the fuse bears, in A
     * @return its rating, in A; nothing if the least for the load is more than that part bears, or than 20 A
     */
    static OptionalDouble between(double loadAmps, double bearsAmps) {
        return AMPS.stream()
                .mapToDouble(Double::doubleValue)
                .filter(amps -> amps >= loadAmps / STEADY_SHARE)
                .findFirst()
                .stream()
                .filter(amps -> amps <= bearsAmps)
                .findFirst();
    }

    /**
     * The greatest rating that still guards a part.
     *
     * @param bearsAmps what it bears, in A
     * @return the rating, in A; nothing if even 100 mA is too much
     */
    static OptionalDouble atMost(double bearsAmps) {
        return AMPS.stream()
                .mapToDouble(Double::doubleValue)
                .filter(amps -> amps <= bearsAmps)
                .max();
    }

    /**
     * Whether fuses of a rating are made.
     *
     * @param amps a rating, in A
     * @return true for a preferred rating
     */
    static boolean has(double amps) {
        return AMPS.contains(amps);
    }
}
