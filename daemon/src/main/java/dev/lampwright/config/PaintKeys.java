package dev.lampwright.config;

import dev.lampwright.colour.Colour;
import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Interpolation;
import dev.lampwright.colour.Light;
import dev.lampwright.colour.Stop;
import dev.lampwright.look.EmberPaint;
import dev.lampwright.look.PaintSpec;
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
        EMBER
    }

    private PaintKeys() {}

    static PaintSpec read(Table table) {
        return switch (table.oneOf("paint", Words.of(Kind.values(), Words::lowerCase))
                .orElse(Kind.SOLID)) {
            case SOLID -> new SolidPaint(colour(table));
            case RAMP -> new RampPaint(gradient(table), MotionKeys.read(table));
            case SCALE -> new ScalePaint(gradient(table), FollowKeys.read(table, ""));
            case EMBER -> ember(table);
        };
    }

    private static Colour colour(Table table) {
        if (!table.has("colour")) {
            table.mistake("colour", "is missing", WANTED_COLOUR);
        }
        return table.parsed("colour", WANTED_COLOUR, CssColour::colour).orElse(STAND_IN);
    }

    private static Gradient gradient(Table table) {
        boolean steps = table.flag("steps").orElse(false);
        List<Stop> stops = stops(table, steps);
        if (!steps) {
            return Gradient.flowing(stops, interpolation(table));
        }
        if (table.has("interpolation")) {
            table.mistake("interpolation", "has no use with steps = true", "remove one of the two");
        }
        return Gradient.stepped(stops);
    }

    private static Interpolation interpolation(Table table) {
        return table.parsed("interpolation", WANTED_INTERPOLATION, Interpolation::parse)
                .orElse(Interpolation.OKLAB);
    }

    private static List<Stop> stops(Table table, boolean steps) {
        List<Colour> colours = colours(table);
        List<Stop> usual = steps ? Stop.stretches(colours) : Stop.evenly(colours);
        List<Double> places = table.numbers("stops", 0, 1);
        if (!table.has("stops") || !table.right()) {
            return usual;
        }
        if (places.size() != colours.size()) {
            String what = "has " + places.size() + " places for " + colours.size() + " colours";
            table.mistake("stops", what, "give one from 0 to 1 for each colour");
            return usual;
        }
        if (!places.equals(places.stream().sorted().toList())) {
            table.mistake("stops", "goes back", "give places that rise from 0 to 1");
            return usual;
        }
        List<Stop> stops = new ArrayList<>();
        colours.forEach(colour -> stops.add(new Stop(colour, places.get(stops.size()))));
        return stops;
    }

    private static List<Colour> colours(Table table) {
        List<String> texts = table.texts("colours", WANTED_COLOURS);
        if (!table.has("colours")) {
            table.mistake("colours", "is missing", WANTED_COLOURS);
        } else if (texts.size() == 1 && table.right()) {
            table.mistake("colours", "has one colour", WANTED_COLOURS);
        }
        List<Colour> colours = new ArrayList<>();
        for (String text : texts) {
            colours.add(table.attempt("colours", WANTED_COLOUR, () -> CssColour.colour(text))
                    .orElse(STAND_IN));
        }
        return colours.isEmpty() ? List.of(STAND_IN) : colours;
    }

    private static EmberPaint ember(Table table) {
        EmberPaint usual = EmberPaint.USUAL;
        return new EmberPaint(
                table.numberIfThere("brightest_K", 1000, 10_000).orElse(usual.brightestK()),
                table.numberIfThere("spark_K", 1, 10_000).orElse(usual.sparkK()),
                table.numberIfThere("sparks_per_px_s", 0, 60).orElse(usual.sparksPerPixelSecond()),
                table.numberIfThere("diffusion_px2_per_s", 0, 30).orElse(usual.diffusion()),
                table.numberIfThere("cooling_s", 0.05, 600).orElse(usual.coolingSeconds()),
                ExtentKeys.seed(table));
    }
}
