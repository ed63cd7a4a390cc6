package dev.lampwright.config;

import dev.lampwright.colour.Calibration;
import dev.lampwright.colour.StripSpec;
import dev.lampwright.protocol.Setup;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.List;

/**
 * The section {@code [strip]}.
 *
 * @param spec how the strip takes light
 * @param channelMicroamps current of each channel at full duty, in µA, in the strip's order
 * @param darkMicroamps current of a dark pixel, in µA
 */
record StripSection(StripSpec spec, List<Integer> channelMicroamps, int darkMicroamps) {
    private static final int MOST_PIXELS = 65535;
    private static final int MOST_BYTES = 65535;
    private static final double MOST_MILLIAMPS = 65.535;
    /** One channel of a WS2812 of an early issue (its datasheet; from memory). Later issues take less. */
    private static final double USUAL_CHANNEL = 20;
    /** The chip in a dark WS2812, rounded up (common practice, no source). */
    private static final double USUAL_IDLE = 1;

    private static final String USUAL_ORDER = "GRB";
    private static final String WANTED_ORDER =
            "give the strip's order: each of R, G and B once, and W once if it has white, for instance \"GRB\"";

    static StripSection read(Table table) {
        int pixels = table.needWhole("pixels", 1, MOST_PIXELS);
        String order = order(table);
        List<Double> milliamps = table.numbers("channel_mA", 0.001, MOST_MILLIAMPS, USUAL_CHANNEL);
        double idle = table.number("idle_mA", 0, MOST_MILLIAMPS, USUAL_IDLE);
        if (table.right()) {
            noteMismatch(table, pixels, order, milliamps);
        }
        Calibration calibration = StripColours.read(table, order.contains("W"));
        boolean dithering = table.flag("dithering").orElse(false);
        return new StripSection(
                new StripSpec(pixels, order, calibration, dithering),
                channels(milliamps, order.length()),
                microamps(idle));
    }

    /** How many pixels there are. */
    int pixels() {
        return spec.pixels();
    }

    /** The strip's order of channels. */
    String order() {
        return spec.order();
    }

    private static String order(Table table) {
        if (!table.has("order")) {
            return table.defaultOf("order", USUAL_ORDER, USUAL_ORDER);
        }
        String order = table.text("order", WANTED_ORDER).orElse(USUAL_ORDER);
        if (!Setup.isOrder(order)) {
            table.mistake("order", "is " + Wording.quoted(order), WANTED_ORDER);
            return USUAL_ORDER;
        }
        return order;
    }

    private static void noteMismatch(Table table, int pixels, String order, List<Double> milliamps) {
        if (milliamps.size() != 1 && milliamps.size() != order.length()) {
            table.mistake(
                    "channel_mA",
                    "has " + milliamps.size() + " numbers, but " + order + " has " + order.length() + " channels",
                    "give one number for all channels, or one for each in the order " + order);
        }
        if (pixels * order.length() > MOST_BYTES) {
            table.mistake(
                    "pixels",
                    "is " + pixels + ", too many for " + order.length() + " channels",
                    "give a whole number from 1 to " + MOST_BYTES / order.length());
        }
    }

    private static List<Integer> channels(List<Double> milliamps, int count) {
        return milliamps.size() == 1
                ? Collections.nCopies(count, microamps(milliamps.get(0)))
                : milliamps.stream().map(StripSection::microamps).toList();
    }

    /** Rounded up, so that the current that is reckoned with is never too low. */
    private static int microamps(double milliamps) {
        return BigDecimal.valueOf(milliamps)
                .movePointRight(3)
                .setScale(0, RoundingMode.CEILING)
                .intValueExact();
    }
}
