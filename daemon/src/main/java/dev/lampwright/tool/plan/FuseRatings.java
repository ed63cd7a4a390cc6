package dev.lampwright.tool.plan;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The ratings of available fuses, and what a standard guarantees for them. */
final class FuseRatings {
    /** Preferred ratings of IEC 60127, glass and ceramic fuses, which follow the R10 series of ISO 3 (from memory), from 100 mA on; over 10 A the same series. */
    private static final List<Double> IEC_60127 = List.of(
            0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0,
            10.0, 12.5, 16.0, 20.0);

    /** Blade fuses of ISO 8820-3, types C and F, up to 30 A; the values sold in both sizes; the standard itself was not consulted. */
    private static final List<Double> ISO_8820 = List.of(1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0);

    /** Glass fuses of 6.3 × 32 mm by UL 248-14; the values sold; the standard itself was not consulted. */
    private static final List<Double> UL_248_14 = List.of(
            0.1, 0.125, 0.1875, 0.2, 0.25, 0.3, 0.375, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.25, 2.5, 3.0, 4.0, 5.0, 6.0,
            7.0, 8.0, 9.0, 10.0, 15.0, 20.0, 25.0, 30.0);

    /** Share of its rating that a fuse carries all the time without ageing (common practice, no source). */
    static final double STEADY_SHARE = 0.75;

    /**
     * The multiple of its rating that is certain to blow a fuse: within 30 minutes by IEC 60127-2 (from memory). Those of UL 248-14 blow at
     * 1.35 within an hour, so this is on the safe side for them.
     */
    static final double SURE_TO_BLOW = 2.1;

    /** Where the ratings come from. */
    static final String SOURCE = "IEC 60127, ISO 8820 and UL 248-14";

    private static final double NOISE = 1e-9;

    private FuseRatings() {}

    /**
     * The fuse for a continuous load: the smallest of at least the load ÷ {@link #STEADY_SHARE}.
     *
     * @param loadAmps the load, in A (RMS)
     * @param carriesAmps what the weakest part after the fuse carries, in A
     * @return its rating, in A, of IEC 60127 if one fits; empty if the smallest for the load is more than that part carries
     */
    static OptionalDouble between(double loadAmps, double carriesAmps) {
        return Stream.of(IEC_60127, ISO_8820, UL_248_14)
                .flatMap(series -> series.stream()
                        .filter(amps -> amps * (1 + NOISE) >= loadAmps / STEADY_SHARE)
                        .limit(1))
                .mapToDouble(Double::doubleValue)
                .filter(amps -> amps <= carriesAmps * (1 + NOISE))
                .findFirst();
    }

    /**
     * The smallest rating for a load, whatever is behind it.
     *
     * @param loadAmps the load, in A (RMS)
     * @return A; the load ÷ {@link #STEADY_SHARE} if no fuse is that large
     */
    static double forLoad(double loadAmps) {
        return between(loadAmps, Double.MAX_VALUE).orElse(loadAmps / STEADY_SHARE);
    }

    /**
     * The rating that is assumed for a fuse that the file does not name.
     *
     * @param loadAmps the load, in A
     * @return A, 0.1 at least
     */
    static double assumed(double loadAmps) {
        return Math.max(IEC_60127.get(0), loadAmps / STEADY_SHARE);
    }

    /**
     * The largest rating that still protects a part.
     *
     * @param carriesAmps what it carries, in A
     * @return the rating of IEC 60127, in A; empty if even 100 mA is too much
     */
    static OptionalDouble atMost(double carriesAmps) {
        return IEC_60127.stream()
                .mapToDouble(Double::doubleValue)
                .filter(amps -> amps <= carriesAmps * (1 + NOISE))
                .max();
    }

    /**
     * Whether fuses of a rating are made.
     *
     * @param amps a rating, in A
     * @return true if it is in any of the three standards
     */
    static boolean has(double amps) {
        return Stream.of(IEC_60127, ISO_8820, UL_248_14).anyMatch(series -> series.contains(amps));
    }
}
