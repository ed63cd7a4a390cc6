package dev.lampwright.config;

import dev.lampwright.colour.Colour;
import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Interpolation;
import dev.lampwright.colour.Light;
import dev.lampwright.colour.Stop;
import dev.lampwright.look.EmberPaint;
import dev.lampwright.look.Motion;
import dev.lampwright.look.PaintSpec;
import dev.lampwright.look.PalettePaint;
import dev.lampwright.look.RampPaint;
import dev.lampwright.look.ScalePaint;
import dev.lampwright.look.SolidPaint;
import java.util.ArrayList;
import java.util.List;

/** The keys of a layer that say what colour it has. */
final class PaintKeys {
    private static final String WANTED_COLOUR =
            "give a CSS colour, for instance \"orange\", \"#ff8000\" or \"oklch(70% 0.15 50)\"";
    private static final String WANTED_COLOURS =
            "give two CSS colours or more in an array, for instance [\"midnightblue\", \"orangered\"]";
    private static final String WANTED_INTERPOLATION = "give \"oklab\" or \"oklch shorter\"";
    private static final Colour STAND_IN = Colour.of(Light.WHITE);

    private enum Kind {
        SOLID,
        RAMP,
        SCALE,
        PALETTE,
        EMBER
    }

    private static final String FOR_RAMPS = "paint = \"ramp\"";
    private static final String FOR_GRADIENTS = "paint = \"ramp\" or \"scale\"";
    private static final Key<Kind> PAINT = Key.word("paint", Kind.class)
            .otherwise(Kind.SOLID, "solid")
            .comment(
                    "\"scale\"",
                    "one colour; colours along the zone; colours by a signal; a colour for each grain; a fire");
    private static final Key<Boolean> STEPS = Key.flag("steps")
            .otherwise(false, "false")
            .with(FOR_GRADIENTS)
            .comment("true", "hard steps between the colours");
    private static final Key<Boolean> RING = Key.flag("ring")
            .otherwise(false, "false: the last meets the first in a seam")
            .with(FOR_RAMPS)
            .comment("true", "the last colour goes over into the first, without a seam");
    private static final Key<Double> SPREAD = Key.number("spread", 0, 100)
            .otherwise(1.0, "1")
            .with(FOR_RAMPS)
            .comment(
                    "0",
                    "how much of the colours the zone shows at once: 1 all, 0 one colour everywhere, which changes as"
                            + " they move");
    private static final Key<Interpolation> INTERPOLATION = Key.parsed(
                    "interpolation", "`oklab` or `oklch shorter`", WANTED_INTERPOLATION, Interpolation::parse)
            .of("interpolation")
            .otherwise(Interpolation.OKLAB, "oklab")
            .with(FOR_GRADIENTS)
            .comment("\"oklch shorter\"", "the way from one colour to the next");
    private static final Key<Double> BRIGHTEST = ember(
            "brightest_K",
            1000,
            10_000,
            EmberPaint.USUAL.brightestK(),
            "1900",
            "temperature of full light, in K: 1400 red coals, 1650 a fire, 1900 a candle");
    private static final Key<Double> STRIKE = ember(
            "strike_K",
            1,
            10_000,
            EmberPaint.USUAL.strikeK(),
            "400",
            "the most that a strike heats a pixel, in K: more is brighter, usually 200 to 1000");
    private static final Key<Double> STRIKES = ember(
            "strikes_per_px_s",
            0,
            60,
            EmberPaint.USUAL.strikesPerPixelSecond(),
            "2",
            "strikes on each pixel in a second: few strong ones flicker, many weak ones glow; usually 2 to 10");
    private static final Key<Double> DIFFUSION = ember(
            "diffusion_px2_per_s",
            0,
            30,
            EmberPaint.USUAL.diffusion(),
            "2",
            "how fast heat spreads, in pixels² a second: more makes flames wider, usually 1 to 10");
    private static final Key<Double> TIME_CONSTANT = ember(
            "time_constant_s",
            0.05,
            600,
            EmberPaint.USUAL.timeConstantSeconds(),
            "1.5",
            "time in which heat falls to 37 %, in s: longer is brighter and calmer, usually 0.4 to 2");

    /** The keys that say which colour. */
    static final List<Key<?>> KEYS = List.of(
            PAINT,
            Key.own("colour", "CSS Color 4")
                    .of("colour")
                    .with("paint = \"solid\"")
                    .comment("\"orange\"", "a name, hex, rgb(), hsl(), hwb(), lab(), lch(), oklab(), oklch(), color()"),
            Key.own("colours", "two colours or more in an array")
                    .of("colours")
                    .with("paint = \"ramp\", \"scale\" or \"palette\"")
                    .comment("[\"midnightblue\", \"orangered\"]", "from the first to the last"),
            INTERPOLATION,
            STEPS,
            Key.own("stops", "numbers that rise from 0 to 1, one for each colour")
                    .of("numbers")
                    .with(FOR_GRADIENTS)
                    .without("evenly apart")
                    .comment("[0, 1]", "where each colour is"),
            RING,
            SPREAD,
            BRIGHTEST,
            STRIKE,
            STRIKES,
            DIFFUSION,
            TIME_CONSTANT);

    private PaintKeys() {}

    private static Key<Double> ember(
            String name, double least, double most, double usual, String example, String help) {
        return Key.number(name, least, most)
                .otherwise(usual, Wording.number(usual))
                .with("paint = \"ember\"")
                .comment(example, help);
    }

    static PaintSpec read(Table table) {
        return switch (table.get(PAINT)) {
            case SOLID -> new SolidPaint(colour(table));
            case RAMP -> ramp(table);
            case SCALE -> new ScalePaint(gradient(table, false), FollowKeys.read(table, ""));
            case PALETTE -> palette(table);
            case EMBER -> ember(table);
        };
    }

    private static Colour colour(Table table) {
        if (!table.has("colour") && table.right()) {
            table.mistake("colour", new MistakeText("no_colour", "is missing", WANTED_COLOUR));
        }
        return table.parsed("colour", WANTED_COLOUR, CssColour::colour).orElse(STAND_IN);
    }

    private static PaintSpec ramp(Table table) {
        Motion drift = MotionKeys.read(table);
        double spread = table.get(SPREAD);
        if (drift.backAndForth() && spread >= 1 && table.right()) {
            String what = table.has("spread")
                    ? "is " + Wording.number(spread) + " beside back_and_forth"
                    : "is missing beside back_and_forth";
            table.mistake(
                    "spread",
                    new MistakeText(
                            "spread_too_large",
                            what,
                            "give less than 1, such as 0.5, so that there is something to go back and forth in"));
        }
        return new RampPaint(gradient(table, table.get(RING)), drift, spread);
    }

    private static PaintSpec palette(Table table) {
        if (!ExtentKeys.isGrains(table)) {
            table.mistake(
                    "paint",
                    new MistakeText(
                            "palette_not_grains",
                            "is \"palette\", which is for grains",
                            "write extent = \"grains\" too, or paint = \"ramp\""));
        }
        return new PalettePaint(colours(table), ExtentKeys.glint(table), ExtentKeys.seed(table));
    }

    private static Gradient gradient(Table table, boolean ring) {
        boolean steps = table.get(STEPS);
        if (steps && ring) {
            table.mistake(
                    "ring",
                    new MistakeText(
                                    "not_both",
                                    "cannot be combined with steps = true",
                                    "remove it: colours in steps have no seam")
                            .with("other", "steps"));
        }
        List<Stop> stops = stops(table, steps, ring && !steps);
        if (!steps) {
            return Gradient.flowing(stops, interpolation(table));
        }
        if (table.has("interpolation")) {
            table.mistake(
                    "interpolation",
                    new MistakeText("not_both", "cannot be combined with steps = true", "remove one of the two")
                            .with("other", "steps"));
        }
        return Gradient.stepped(stops);
    }

    private static Interpolation interpolation(Table table) {
        return table.get(INTERPOLATION);
    }

    private static List<Stop> stops(Table table, boolean steps, boolean ring) {
        List<Colour> colours = colours(table);
        List<Stop> usual = steps ? Stop.stretches(colours) : Stop.evenly(ring ? closed(colours) : colours);
        List<Double> places = table.numbers("stops", 0, 1);
        if (!table.has("stops") || !table.right()) {
            return usual;
        }
        if (places.size() != colours.size()) {
            String what = "has " + places.size() + " places for " + colours.size() + " colours";
            table.mistake(
                    "stops",
                    new MistakeText("stops_count", what, "give one from 0 to 1 for each colour")
                            .with("stops", places.size())
                            .with("colours", colours.size()));
            return usual;
        }
        if (!places.equals(places.stream().sorted().toList())) {
            table.mistake("stops", new MistakeText("stops_fall", "goes back", "give places that rise from 0 to 1"));
            return usual;
        }
        List<Stop> stops = new ArrayList<>();
        colours.forEach(colour -> stops.add(new Stop(colour, places.get(stops.size()))));
        if (ring) {
            stops.add(new Stop(colours.get(0), 1));
        }
        return stops;
    }

    private static List<Colour> closed(List<Colour> colours) {
        List<Colour> ring = new ArrayList<>(colours);
        ring.add(colours.get(0));
        return ring;
    }

    private static List<Colour> colours(Table table) {
        List<String> texts = table.texts("colours", WANTED_COLOURS);
        if (!table.has("colours")) {
            table.mistake("colours", new MistakeText("no_colours", "is missing", WANTED_COLOURS));
        } else if (texts.size() == 1 && table.right()) {
            table.mistake("colours", new MistakeText("one_colour", "has one colour", WANTED_COLOURS));
        }
        List<Colour> colours = new ArrayList<>();
        for (String text : texts) {
            colours.add(table.attempt("colours", WANTED_COLOUR, () -> CssColour.colour(text))
                    .orElse(STAND_IN));
        }
        return colours.isEmpty() ? List.of(STAND_IN) : colours;
    }

    private static EmberPaint ember(Table table) {
        return new EmberPaint(
                table.get(BRIGHTEST),
                table.get(STRIKE),
                table.get(STRIKES),
                table.get(DIFFUSION),
                table.get(TIME_CONSTANT),
                ExtentKeys.seed(table));
    }
}
