package dev.lampwright.tool.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** How numbers are shown to the user. */
final class FigureText {
    private static final double PERCENT = 100;

    /** Rounding of binary fractions must not cost a tenth. */
    private static final double NOISE = 1e-9;

    private FigureText() {}

    /** For example {@code 1.50 A}. */
    static String amps(double amps) {
        return fixed(amps, 2) + " A";
    }

    /** For example {@code 7.5 W}. */
    static String watts(double watts) {
        return fixed(watts, 1) + " W";
    }

    /** For example {@code 4.93 V}. */
    static String volts(double volts) {
        return fixed(volts, 2) + " V";
    }

    /** A voltage at a pixel: below 0 the wiring cannot carry the load at all, and the exact value is not shown. */
    static String pixelVolts(double volts) {
        return volts < 0 ? "under 0 V" : volts(volts);
    }

    /** For example {@code 63 %}, for a share of 0.63. */
    static String percent(double share) {
        return fixed(PERCENT * share, 0) + " %";
    }

    /** A number as given, without needless digits: {@code 3.15}. */
    static String plain(double number) {
        return BigDecimal.valueOf(number)
                .setScale(3, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A number rounded to a number of decimals. */
    static String fixed(double number, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", number);
    }

    /** A rating of at least this much, to a tenth. */
    static String atLeast(double amps) {
        return BigDecimal.valueOf(amps * (1 - NOISE))
                        .setScale(1, RoundingMode.CEILING)
                        .toPlainString() + " A";
    }

    /** A current of at most this much, in whole mA. */
    static String milliampsAtMost(double amps) {
        return BigDecimal.valueOf(Math.max(0, amps * (1 + NOISE)))
                        .movePointRight(3)
                        .setScale(0, RoundingMode.FLOOR) + " mA";
    }
}
