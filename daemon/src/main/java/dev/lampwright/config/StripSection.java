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
 * @param runs the runs that the strip is cut into, one per data line; empty if all of it is on the first
 */
record StripSection(StripSpec spec, List<Integer> channelMicroamps, int darkMicroamps, List<Setup.Run> runs) {
    static final int MOST_PIXELS = 65535;
    private static final int MOST_BYTES = 65535;
    private static final double MOST_MILLIAMPS = 65.535;
    /** One channel of a WS2812 of an early issue (its datasheet; from memory). Later issues draw less. */
    private static final double USUAL_CHANNEL = 20;
    /** The chip in a dark WS2812, rounded up (common practice, no source). */
    private static final double USUAL_IDLE = 1;

    private static final String USUAL_ORDER = "GRB";
    private static final String WANTED_ORDER =
            "give the strip's order: each of R, G and B once, and W once if it has white, for instance \"GRB\"";

    private static final Key<Integer> PIXELS =
            Key.whole("pixels", 1, MOST_PIXELS).needed().example("30", "how many there are");
    private static final Key<Double> IDLE = Key.number("idle_mA", 0, MOST_MILLIAMPS)
            .usual(USUAL_IDLE, Wording.number(USUAL_IDLE))
            .example("1", "one dark pixel");
    private static final Key<Boolean> DITHERING = Key.flag("dithering")
            .otherwise(false, "false")
            .example("false", "true takes turns between two levels, so that dim light is finer");

    /** The strip. */
    static final Section SECTION = Section.of(
            "strip",
            "the addressable strip",
            PIXELS,
            Key.own("order", "R, G and B once each, and W once if it has white")
                    .without(USUAL_ORDER)
                    .example("\"GRB\"", "the order of its bytes; with white for instance \"GRBW\""),
            Key.own("channel_mA", "number, or one for each channel, 0.001 to 65.535")
                    .without("20")
                    .example(
                            "12",
                            "one channel of one pixel at full; or one for each, as in `order`: [12, 11, 12] for G, R, B"),
            IDLE,
            StripOutputs.KEY,
            StripColours.WHITE_K,
            Key.own("gains", "three numbers, 0.01 to 1")
                    .comment("[1.0, 0.8, 0.7]", "what is used of red, green and blue, if white is not white"),
            Key.own("measured", "table"),
            DITHERING,
            MountingKeys.SHAPE,
            Key.own("sides_px", "up to four whole numbers")
                    .with("shape = \"frame\"")
                    .comment("[10, 5, 10, 5]", "pixels of each side, in the order of the strip"),
            MountingKeys.BEGINS,
            MountingKeys.CLOCKWISE,
            MountingKeys.SEEN_AS);

    static StripSection read(Table table) {
        int pixels = table.as(SECTION)
                .need(PIXELS, "give a whole number from 1 to " + MOST_PIXELS)
                .orElse(MOST_PIXELS);
        String order = order(table);
        List<Double> milliamps = table.numbers("channel_mA", 0.001, MOST_MILLIAMPS, USUAL_CHANNEL);
        double idle = table.get(IDLE);
        if (table.right()) {
            noteMismatch(table, pixels, order, milliamps);
        }
        Calibration calibration = StripColours.read(table, order.contains("W"));
        boolean dithering = table.get(DITHERING);
        List<Setup.Run> runs = StripOutputs.read(table, pixels);
        return new StripSection(
                new StripSpec(pixels, order, calibration, dithering),
                channels(milliamps, order.length()),
                microamps(idle),
                runs);
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

    /** Rounded up, so that the calculated current is never too low. */
    private static int microamps(double milliamps) {
        return BigDecimal.valueOf(milliamps)
                .movePointRight(3)
                .setScale(0, RoundingMode.CEILING)
                .intValueExact();
    }
}
