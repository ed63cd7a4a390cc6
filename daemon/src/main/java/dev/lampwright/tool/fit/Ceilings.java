package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.util.OptionalDouble;

/** The ceiling that a supply and its fuse can carry. */
final class Ceilings {
    /** Share of a supply's printed rating that is drawn continuously (common practice, no source). */
    private static final double SUPPLY_SHARE = 0.8;

    /** Share of its rating that a fuse carries continuously without ageing (common practice, no source). */
    private static final double FUSE_SHARE = 0.75;

    private static final int MOST = 65_535;
    private static final double MILLIS = 1000;

    private Ceilings() {}

    /**
     * The ceiling, in mA. Without a known supply, or without a fuse, it is no more than what was safe before.
     *
     * @param amps what the supply can give, in A
     * @param fuseAmps rating of the fuse, in A
     */
    static int of(OptionalDouble amps, OptionalDouble fuseAmps) {
        double supply = amps.orElse(FittingSetups.SAFE_CEILING / MILLIS / SUPPLY_SHARE) * SUPPLY_SHARE;
        double fuse = fuseAmps.orElse(FittingSetups.SAFE_CEILING / MILLIS / FUSE_SHARE) * FUSE_SHARE;
        return (int) Math.min(MOST, Math.round(Math.floor(Math.min(supply, fuse) * MILLIS + 1e-6)));
    }

    /**
     * The ceiling that a fuse can carry once it is known what is lit. A ceiling is a mean, and pulses heat a fuse by their root mean
     * square: with a constant current D, and P in pulses of duty d, the mean square is D² + (2·D·P + P²)·d.
     *
     * @param ceiling the previous ceiling, in mA
     * @param fuseAmps rating of the fuse, in A
     * @param darkMilliamps current at all times, in mA
     * @param fullMilliamps current with everything at full, in mA
     * @return mA, no more than before; unchanged without a fuse, or if even the dark lights are too much for it
     */
    static int heated(int ceiling, OptionalDouble fuseAmps, double darkMilliamps, double fullMilliamps) {
        if (fuseAmps.isEmpty()) {
            return ceiling;
        }
        double carried = FUSE_SHARE * fuseAmps.getAsDouble() * MILLIS;
        double pulses = fullMilliamps - darkMilliamps;
        double room = carried * carried - darkMilliamps * darkMilliamps;
        if (pulses <= 0 || room <= 0) {
            return ceiling;
        }
        double duty = room / (2 * darkMilliamps * pulses + pulses * pulses);
        if (duty >= 1) {
            return ceiling;
        }
        return (int) Math.min(ceiling, Math.floor(darkMilliamps + pulses * duty + 1e-6));
    }

    /** Why a ceiling goes down. */
    static Phrase heatedWords(int ceiling, OptionalDouble fuseAmps, double fullMilliamps) {
        return Phrase.of(
                "ceiling_heated",
                "Dimmed light draws pulses of up to " + Math.round(fullMilliamps)
                        + " mA, which heat a fuse of " + TypedNumbers.shown(fuseAmps.orElse(0))
                        + " A more than their average does: the ceiling, which is an average, goes down to " + ceiling
                        + " mA.",
                "pulses",
                Math.round(fullMilliamps),
                "fuse",
                fuseAmps.orElse(0),
                "ceiling",
                ceiling);
    }

    /** The reason. */
    static Phrase words(OptionalDouble amps, OptionalDouble fuseAmps) {
        if (amps.isEmpty()) {
            return Phrase.of(
                    "ceiling_no_supply",
                    "While the supply is unknown, the ceiling is no more than " + FittingSetups.SAFE_CEILING
                            + " mA. Look at its label, and come back with b.",
                    "most",
                    FittingSetups.SAFE_CEILING);
        }
        if (fuseAmps.isEmpty()) {
            return Phrase.of(
                    "ceiling_no_fuse",
                    "Without a fuse the ceiling is no more than " + FittingSetups.SAFE_CEILING
                            + " mA. Fit one: stop with q, unplug, and resume afterwards.",
                    "most",
                    FittingSetups.SAFE_CEILING);
        }
        return Phrase.of(
                "ceiling_shares", "A supply is asked for at most 80 % of its printed rating, a fuse for 75 %.");
    }
}
