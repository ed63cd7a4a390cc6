package dev.lampwright.tool.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** How numbers are shown to the user. */
final class FigureText {
    private static final double PERCENT = 100;

    /** Rounding of binary fractions is not to cost a tenth. */
    private static final double NOISE = 1e-9;

    private FigureText() {}

    /** For instance {@code 1.50 A}. */
    static String amps(double amps) {
        return fixed(amps, 2) + " A";
    }

    /** For instance {@code 7.5 W}. */
    static String watts(double watts) {
        return fixed(watts, 1) + " W";
    }

    /** For instance {@code 4.93 V}. */
    static String volts(double volts) {
        return fixed(volts, 2) + " V";
    }

    /** A voltage at a pixel: below 0 the wiring cannot carry the load at all, and it is not told how far. */
    static String pixelVolts(double volts) {
        return volts < 0 ? "under 0 V" : volts(volts);
    }

    /** For instance {@code 63 %}, of a share of 0.63. */
    static String percent(double share) {
        return fixed(PERCENT * share, 0) + " %";
    }

    /** A number as it was told, without needless digits: {@code 3.15}. */
    static String plain(double number) {
        return BigDecimal.valueOf(number)
                .setScale(3, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A number rounded to some digits after the point. */
    static String fixed(double number, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", number);
    }

    /** A rating that is at least this much, to a tenth. */
    static String atLeast(double amps) {
        return BigDecimal.valueOf(amps * (1 - NOISE))
                        .setScale(1, RoundingMode.CEILING)
                        .toPlainString() + " A";
    }

    /** A current that is at most this much, in whole mA. */
    static String milliampsAtMost(double amps) {
        return BigDecimal.valueOf(Math.max(0, amps * (1 + NOISE)))
                        .movePointRight(3)
                        .setScale(0, RoundingMode.FLOOR) + " mA";
    }
}
