package dev.lampwright.config;

import dev.lampwright.colour.BlackBody;
import dev.lampwright.colour.Calibration;
import dev.lampwright.colour.Chromaticity;
import dev.lampwright.colour.Emitter;
import java.util.List;

/** The keys of {@code [strip]} that say what its LEDs make of their duties. */
final class StripColours {
    private static final double COLDEST_K = 1500;
    private static final double HOTTEST_K = 25_000;
    private static final double LEAST_GAIN = 0.01;
    private static final double BRIGHTEST = 1e9;
    private static final String WANTED_MEASURED = "measure again";
    private static final Emitter STAND_IN = new Emitter(Chromaticity.D65, 1);

    /** The key {@code white_K}. */
    static final Key<Double> WHITE_K = Key.number("white_K", COLDEST_K, HOTTEST_K)
            .comment("4000", "the white LEDs' colour temperature, where there are any");

    private static final Key<Double> TARGET_K = Key.number("target_K", COLDEST_K, HOTTEST_K)
            .without("D65")
            .comment("6500", "the colour temperature that white should have");

    /** Measurements of the strip's LEDs. */
    static final Section MEASURED = Section.of(
            "strip.measured",
            "what was measured of the LEDs, instead of `gains`",
            Key.own("red", "table").needed(),
            Key.own("green", "table").needed(),
            Key.own("blue", "table").needed(),
            Key.own("white", "table"),
            TARGET_K);

    /** Measurements of one kind of LED. */
    static final Section EMITTER = Section.of(
            "strip.measured.COLOUR",
            "one kind of LED",
            Key.own("x", "number, 0 to 1").needed().comment("0.69", "its place on the CIE 1931 diagram"),
            Key.own("y", "number, 0 to 1").needed().comment("0.31", "its place on the CIE 1931 diagram"),
            Key.own("luminance", "number, above 0").needed().comment("30", "its light, in any unit that all share"));

    private StripColours() {}

    /**
     * Reads the keys.
     *
     * @param table the section {@code [strip]}
     * @param hasWhite whether the strip has white LEDs
     * @return what is known about its LEDs
     */
    static Calibration read(Table table, boolean hasWhite) {
        return white(table, hasWhite, colours(table, hasWhite));
    }

    private static Calibration colours(Table table, boolean hasWhite) {
        List<Double> gains = table.numbers("gains", LEAST_GAIN, 1);
        if (table.has("measured")) {
            if (table.has("gains")) {
                table.mistake("gains", "cannot be combined with measured", "keep one of the two");
            }
            return measured(table, hasWhite);
        }
        if (gains.isEmpty()) {
            return Calibration.none();
        }
        if (gains.size() != DimmerEntry.COLOURS) {
            String right = "give one from " + LEAST_GAIN + " to 1 for each of red, green and blue";
            table.mistake("gains", "has " + gains.size() + " numbers, not 3", right);
            return Calibration.none();
        }
        return Calibration.gains(gains.get(0), gains.get(1), gains.get(2));
    }

    private static Calibration measured(Table strip, boolean hasWhite) {
        Table table = strip.table("measured").as(MEASURED);
        Emitter red = emitter(table, "red");
        Emitter green = emitter(table, "green");
        Emitter blue = emitter(table, "blue");
        Chromaticity target = table.find(TARGET_K).map(BlackBody::chromaticity).orElse(Chromaticity.D65);
        if (!table.right()) {
            return Calibration.none();
        }
        return strip.attempt("measured", WANTED_MEASURED, () -> {
                    Calibration colours = Calibration.measured(red, green, blue, target);
                    return hasWhite && table.has("white") ? colours.withWhite(emitter(table, "white")) : colours;
                })
                .orElse(Calibration.none());
    }

    private static Emitter emitter(Table measured, String name) {
        if (!measured.has(name)) {
            String right = "give " + name
                    + " = { x = …, y = …, luminance = … }, its place on the CIE 1931 diagram and its light";
            measured.mistake(name, "is missing", right);
            return STAND_IN;
        }
        Table table = measured.table(name).as(EMITTER);
        double x = table.needNumber("x", 0, 1);
        double y = table.needNumber("y", 0, 1);
        double luminance = table.needNumber("luminance", 0, BRIGHTEST);
        if (!table.right()) {
            return STAND_IN;
        }
        return measured.attempt(name, WANTED_MEASURED, () -> new Emitter(new Chromaticity(x, y), luminance))
                .orElse(STAND_IN);
    }

    private static Calibration white(Table table, boolean hasWhite, Calibration colours) {
        boolean isMeasured = table.isTable("measured")
                && table.table("measured").as(MEASURED).has("white");
        boolean isGiven = table.has("white_K");
        double kelvin = table.find(WHITE_K).orElse(COLDEST_K);
        if (isMeasured && isGiven) {
            table.mistake("white_K", "cannot be combined with measured.white", "keep one of the two");
        } else if (!hasWhite && (isMeasured || isGiven)) {
            String right = "remove it, or give the order of a strip that has, for instance order = \"GRBW\"";
            table.mistake(isGiven ? "white_K" : "measured", "is for white LEDs, which this strip does not have", right);
        }
        if (!isGiven || !table.right()) {
            return colours;
        }
        return table.attempt("white_K", "give another", () -> colours.withWhite(BlackBody.chromaticity(kelvin)))
                .orElse(colours);
    }
}
