package dev.lampwright.config;

import dev.lampwright.look.AllExtent;
import dev.lampwright.look.BandExtent;
import dev.lampwright.look.BarExtent;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.GrainsExtent;
import dev.lampwright.look.Motion;
import dev.lampwright.look.PointerExtent;
import java.util.List;

/** The keys of a layer that say which pixels of its zone it covers. */
final class ExtentKeys {
    private static final double LONGEST = 65_535;
    private static final double NARROWEST = 0.1;

    private enum Kind {
        ALL,
        BAR,
        POINTER,
        BAND,
        GRAINS
    }

    private static final String FOR_BANDS = "extent = \"band\"";
    private static final String FOR_GRAINS = "extent = \"grains\"";
    private static final Key<Kind> EXTENT = Key.word("extent", Kind.class)
            .otherwise(Kind.ALL, "all")
            .comment(
                    "\"bar\"",
                    "the whole zone; a bar or a mark by a signal; a moving stretch; points that come and go");
    private static final Key<Double> WIDTH = Key.number("width_px", NARROWEST, LONGEST)
            .otherwise(2.0, "2")
            .with("extent = \"pointer\" or \"band\"")
            .comment("1", "how wide it is");
    private static final Key<Double> SOFTNESS = Key.number("softness_px", 0, LONGEST)
            .otherwise(0.0, "0")
            .with("extent = \"bar\", \"pointer\" or \"band\"")
            .comment("1", "how wide its soft edge is");
    private static final Key<Double> TAIL = Key.number("tail_px", 0, LONGEST)
            .otherwise(0.0, "0")
            .with(FOR_BANDS)
            .comment("4", "how long its tail is");
    private static final Key<Double> REPEAT = Key.number("repeat_px", 1, LONGEST)
            .without("one band")
            .with(FOR_BANDS)
            .comment("20", "from one band to the next");
    private static final Key<Double> DENSITY = Key.number("density", 0, 1)
            .otherwise(0.1, "0.1")
            .with(FOR_GRAINS)
            .comment("0.1", "share of the pixels that are lit");
    private static final Key<Double> GLINT = Key.number("glint_s", 0.1, 600)
            .otherwise(3.0, "3")
            .with(FOR_GRAINS)
            .comment("3", "how long a grain is lit; one pixel begins a grain twice a second at most");
    private static final Key<Integer> SEED = Key.whole("seed", 0, Integer.MAX_VALUE)
            .otherwise(1, "1")
            .with("paint = \"ember\" or " + FOR_GRAINS)
            .comment("1", "another seed, another pattern");

    /** The keys that say which pixels. */
    static final List<Key<?>> KEYS = List.of(EXTENT, WIDTH, SOFTNESS, TAIL, REPEAT, DENSITY, GLINT, SEED);

    private ExtentKeys() {}

    static ExtentSpec read(Table table) {
        return switch (table.get(EXTENT)) {
            case ALL -> new AllExtent();
            case BAR -> new BarExtent(FollowKeys.read(table, ""), table.get(SOFTNESS));
            case POINTER -> new PointerExtent(FollowKeys.read(table, ""), table.get(WIDTH), table.get(SOFTNESS));
            case BAND -> band(table);
            case GRAINS -> new GrainsExtent(table.get(DENSITY), table.get(GLINT), seed(table));
        };
    }

    /** Whether the layer has grains; a mistake in {@code extent} is reported elsewhere. */
    static boolean isGrains(Table table) {
        return table.has(EXTENT.name()) && table.get(EXTENT) == Kind.GRAINS;
    }

    /** The key {@code glint_s}, which a palette follows as well. */
    static double glint(Table table) {
        return table.get(GLINT);
    }

    /** The key {@code seed}, which some paints have as well. */
    static int seed(Table table) {
        return table.get(SEED);
    }

    private static ExtentSpec band(Table table) {
        double width = table.get(WIDTH);
        double tail = table.get(TAIL);
        double softness = table.get(SOFTNESS);
        double repeat = table.find(REPEAT).orElse(0.0);
        Motion motion = MotionKeys.read(table);
        if (repeat > 0 && motion.backAndForth()) {
            table.mistake(
                    "repeat_px",
                    new MistakeText(
                                    "not_both",
                                    "cannot be used together with back_and_forth",
                                    "keep one of the two: only one band goes back and forth")
                            .with("other", "back_and_forth"));
        }
        if (repeat > 0 && repeat < width + tail + softness && table.right()) {
            table.mistake(
                    "repeat_px",
                    new MistakeText(
                                    "repeat_too_short",
                                    "is " + Wording.number(repeat) + ", shorter than the band of "
                                            + Wording.number(width + tail + softness) + " pixels",
                                    "give more, or make width_px, tail_px or softness_px less")
                            .with("value", repeat)
                            .with("band", width + tail + softness));
        }
        return new BandExtent(width, tail, repeat, motion, softness);
    }
}
