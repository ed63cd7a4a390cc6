package dev.lampwright.config;

import dev.lampwright.wiring.Copper;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;

/** The section {@code [wiring.strip]}: how the addressable strip is wired. */
final class WiredStrip {
    private static final double MOST_PIXELS_PER_M = 1000;
    /** A common density of pixels of 5 V (common practice, no source). */
    private static final double USUAL_PIXELS_PER_M = 60;

    /** Groups of three LEDs at 60 LEDs a metre, or of six at 120: a pixel of 12 or 24 V is one group (common practice, no source). */
    private static final double USUAL_GROUPS_PER_M = 20;
    /** Copper of an ordinary flexible strip: thickness of each conductor, in µm, and width, in mm (common practice, no source). */
    private static final double USUAL_COPPER_UM = 35;

    private static final double USUAL_COPPER_MM = 2.5;

    /** Up to this voltage, pixels are 5 V types. */
    private static final double HIGHEST_5_V = 5.5;
    /** WS2812B datasheet: its characteristics hold from 4.5 V on. */
    private static final double FULL_COLOUR_V = 4.5;
    /** WS2812B datasheet: the supply is 3.5 V at least. */
    private static final double LEAST_V = 3.5;
    /** The same shares for pixels of other voltages (common practice, no source). */
    private static final double FULL_COLOUR_SHARE = 0.9;

    private static final double LEAST_SHARE = 0.7;

    /** WS2812B datasheet: the scan frequency is 400 Hz at least. */
    private static final double USUAL_PWM_HZ = 400;

    private static final double MOST_HZ = 1e6;
    private static final double MILLIS = 1000;

    /** What feeds the strip. */
    private enum Source {
        SUPPLY,
        BOARD
    }

    private static final Key<Source> FROM = Key.word("from", Source.class)
            .usual(Source.SUPPLY, "supply")
            .example("\"supply\"", "or \"board\": the controller's 5 V pin");
    /** Whether the pixels pulse together. */
    private enum Pulses {
        TOGETHER,
        APART
    }

    private static final Key<Double> PIXELS_PER_M = Key.number("pixels_per_m", 1, MOST_PIXELS_PER_M)
            .without("60, or 20 above 5.5 V")
            .example("30", "of the strip; above 5 V a group of three or six LEDs is one pixel: count groups");
    private static final Key<Double> COPPER_UM = Key.number("copper_um", 1, 1000)
            .usual(USUAL_COPPER_UM, "35")
            .example("35", "the strip's own conductors: thickness");
    private static final Key<Double> COPPER_MM =
            Key.number("copper_mm", 0.1, 100).usual(USUAL_COPPER_MM, "2.5").example("2.5", "and width of each");
    private static final Key<Double> FULL_COLOUR = Key.number("full_colour_V", 1, SupplySection.MOST_VOLTS)
            .without("4.5, or 90 % of more than 5.5 V")
            .comment("4.5", "below it colours shift");
    private static final Key<Double> LEAST = Key.number("least_V", 1, SupplySection.MOST_VOLTS)
            .without("3.5, or 70 % of more than 5.5 V")
            .comment("3.5", "below it pixels brown out");
    private static final Key<Double> PWM =
            Key.number("pwm_Hz", 1, MOST_HZ).usual(USUAL_PWM_HZ, "400").comment("400", "of the pixels themselves");
    private static final Key<Pulses> PULSES = Key.word("pulses", Pulses.class)
            .usual(Pulses.TOGETHER, "together")
            .comment("\"apart\"", "if a meter shows that pixels do not pulse together: see the handbook, \"The plan\"");

    /** The strip's wires. */
    static final Section SECTION = Section.of(
                    "wiring.strip",
                    "the strip's wires and conductors",
                    FROM,
                    Key.own("points", "pixel, or array of pixels")
                            .without("0")
                            .example("[0, 29]", "where a pair of wires from the supply joins the strip"),
                    Key.own("length_m", "number, or one for each point, 0.01 to 100")
                            .without("1")
                            .example("[1, 1.5]", "one way; one number for all, or one for each point"),
                    PIXELS_PER_M,
                    COPPER_UM,
                    COPPER_MM,
                    Key.own("loop_ohm_per_m", "number, 0.001 to 100")
                            .comment(
                                    "0.4", "of both conductors together, if you measured it; instead of the two above"),
                    FULL_COLOUR,
                    LEAST,
                    PWM,
                    PULSES)
            .after(WiredFeed.KEYS);

    private WiredStrip() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param volts voltage of the strip's supply
     * @param pixels pixels of the strip, 1 or more
     * @return its wiring
     */
    static Wiring.Strip read(Table table, double volts, int pixels) {
        Source source = table.as(SECTION).get(FROM);
        Wiring.Feed feed = WiredFeed.read(table);
        List<Wiring.Point> points = points(table, pixels);
        boolean fiveVolts = volts <= HIGHEST_5_V;
        double usualPixels = fiveVolts ? USUAL_PIXELS_PER_M : USUAL_GROUPS_PER_M;
        double pixelsPerMetre = table.get(PIXELS_PER_M.usual(usualPixels, Wording.number(usualPixels)));
        double loopOhms = loopOhmsPerMetre(table);
        double full = fiveVolts ? FULL_COLOUR_V : millivolts(FULL_COLOUR_SHARE * volts);
        double least = fiveVolts ? LEAST_V : millivolts(LEAST_SHARE * volts);
        return new Wiring.Strip(
                source == Source.BOARD,
                feed,
                points,
                pixelsPerMetre,
                loopOhms,
                table.get(FULL_COLOUR.usual(full, Wording.number(full))),
                table.get(LEAST.usual(least, Wording.number(least))),
                table.get(PWM),
                table.get(PULSES) == Pulses.TOGETHER);
    }

    /** Rounded to a mV, so that a share of a voltage is written without rounding errors of binary fractions. */
    private static double millivolts(double volts) {
        return Math.round(volts * MILLIS) / MILLIS;
    }

    private static double loopOhmsPerMetre(Table table) {
        if (table.has("loop_ohm_per_m")) {
            return table.needNumber("loop_ohm_per_m", 0.001, 100);
        }
        double micrometres = table.get(COPPER_UM);
        double millimetres = table.get(COPPER_MM);
        return Copper.loopOhmsPerMetre(micrometres, millimetres);
    }

    private static List<Wiring.Point> points(Table table, int pixels) {
        List<Double> places = table.numbers("points", 0, pixels - 1, 0);
        List<Double> lengths = table.numbers("length_m", WiredFeed.SHORTEST_M, WiredFeed.LONGEST_M, WiredFeed.USUAL_M);
        String wanted = "give the pixels where wires from the supply join, each once, from 0 to " + (pixels - 1);
        if (places.isEmpty()) {
            table.mistake("points", "is empty", wanted);
        } else if (places.stream().anyMatch(place -> place != Math.rint(place))) {
            table.mistake("points", "has a number in it that is not whole", wanted);
        } else if (table.right() && new HashSet<>(places).size() < places.size()) {
            table.mistake("points", "has a pixel twice", wanted);
        }
        if (lengths.size() != 1 && lengths.size() != places.size()) {
            table.mistake(
                    "length_m",
                    "has " + lengths.size() + " numbers, but there are " + places.size() + " points",
                    "give one number for all wires, or one for each point");
        }
        return table.right() ? joined(places, lengths) : List.of(new Wiring.Point(0, WiredFeed.USUAL_M));
    }

    private static List<Wiring.Point> joined(List<Double> places, List<Double> lengths) {
        List<Wiring.Point> points = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            points.add(new Wiring.Point(places.get(i).intValue(), lengths.get(lengths.size() == 1 ? 0 : i)));
        }
        points.sort(Comparator.comparingInt(Wiring.Point::pixel));
        return points;
    }
}
