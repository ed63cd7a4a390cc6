package dev.lampwright.config;

import dev.lampwright.look.AllExtent;
import dev.lampwright.look.BandExtent;
import dev.lampwright.look.BarExtent;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.GrainsExtent;
import dev.lampwright.look.PointerExtent;

/** The keys of a layer that say which pixels of its zone it covers. */
final class ExtentKeys {
    private static final double LONGEST = 65_535;
    private static final double NARROWEST = 0.1;
    private static final double USUAL_WIDTH = 2;
    private static final double USUAL_DENSITY = 0.1;
    private static final double SHORTEST_GLINT_S = 0.5;
    private static final double LONGEST_GLINT_S = 600;
    private static final double USUAL_GLINT_S = 3;

    private enum Kind {
        ALL,
        BAR,
        POINTER,
        BAND,
        GRAINS
    }

    private ExtentKeys() {}

    static ExtentSpec read(Table table) {
        return switch (table.oneOf("extent", Words.of(Kind.values(), Words::lowerCase))
                .orElse(Kind.ALL)) {
            case ALL -> new AllExtent();
            case BAR -> new BarExtent(FollowKeys.read(table, ""), pixels(table, "softness_px", 0, 0));
            case POINTER ->
                new PointerExtent(
                        FollowKeys.read(table, ""),
                        pixels(table, "width_px", NARROWEST, USUAL_WIDTH),
                        pixels(table, "softness_px", 0, 0));
            case BAND -> band(table);
            case GRAINS ->
                new GrainsExtent(
                        table.numberIfThere("density", 0, 1).orElse(USUAL_DENSITY),
                        table.numberIfThere("glint_s", SHORTEST_GLINT_S, LONGEST_GLINT_S)
                                .orElse(USUAL_GLINT_S),
                        seed(table));
        };
    }

    /** The key {@code seed}, which some paints have as well. */
    static int seed(Table table) {
        return table.wholeIfThere("seed", 0, Integer.MAX_VALUE).orElse(1);
    }

    private static ExtentSpec band(Table table) {
        double width = pixels(table, "width_px", NARROWEST, USUAL_WIDTH);
        double tail = pixels(table, "tail_px", 0, 0);
        double softness = pixels(table, "softness_px", 0, 0);
        double repeat = table.numberIfThere("repeat_px", 1, LONGEST).orElse(0);
        if (repeat > 0 && repeat < width + tail + softness && table.right()) {
            table.mistake(
                    "repeat_px",
                    "is " + Wording.number(repeat) + ", shorter than the band of "
                            + Wording.number(width + tail + softness) + " pixels",
                    "give more, or make width_px, tail_px or softness_px less");
        }
        return new BandExtent(width, tail, repeat, MotionKeys.read(table), softness);
    }

    private static double pixels(Table table, String key, double least, double usual) {
        return table.numberIfThere(key, least, LONGEST).orElse(usual);
    }
}
