package dev.lampwright.tool.fit;

import java.util.OptionalDouble;

/** The ceiling that a supply and its fuse bear. */
final class Ceilings {
    /** Share of what stands on a supply that is asked of it all the time (common practice, no source). */
    private static final double SUPPLY_SHARE = 0.8;

    /** Share of its rating that a fuse carries all the time without ageing (common practice, no source). */
    private static final double FUSE_SHARE = 0.75;

    private static final int MOST = 65_535;
    private static final double MILLIS = 1000;

    private Ceilings() {}

    /**
     * The ceiling, in mA. Without a supply that is known or without a fuse, it is no more than what was safe before.
     *
     * @param amps what the supply can give, in A
     * @param fuseAmps rating of the fuse, in A
     */
    static int of(OptionalDouble amps, OptionalDouble fuseAmps) {
        double supply = amps.orElse(FittingSetups.SAFE_CEILING / MILLIS / SUPPLY_SHARE) * SUPPLY_SHARE;
        double fuse = fuseAmps.orElse(FittingSetups.SAFE_CEILING / MILLIS / FUSE_SHARE) * FUSE_SHARE;
        return (int) Math.min(MOST, Math.round(Math.floor(Math.min(supply, fuse) * MILLIS + 1e-6)));
    }

    /** Why it is so. */
    static String words(OptionalDouble amps, OptionalDouble fuseAmps) {
        if (amps.isEmpty()) {
            return "Without knowing the supply the ceiling is no more than " + FittingSetups.SAFE_CEILING
                    + " mA. Look at its label, and come back with b.";
        }
        if (fuseAmps.isEmpty()) {
            return "Without a fuse the ceiling is no more than " + FittingSetups.SAFE_CEILING
                    + " mA. Fit one: stop with q, unplug, and go on afterwards.";
        }
        return "A supply is asked for 80 % of what stands on it at most, a fuse for 75 %.";
    }
}
