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
    private static final double USUAL_PIXELS_PER_M = 60;
    /** Copper of an ordinary flexible strip: thickness of each conductor, in µm, and width, in mm (common practice, no source). */
    private static final double USUAL_COPPER_UM = 35;

    private static final double USUAL_COPPER_MM = 2.5;

    /** Voltages up to here are those of pixels of 5 V. */
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

    /** What feeds the strip. */
    private enum Source {
        SUPPLY,
        BOARD
    }

    private WiredStrip() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param volts voltage of the strip's supply
     * @param pixels pixels of the strip, 1 or more
     * @return how it is wired
     */
    static Wiring.Strip read(Table table, double volts, int pixels) {
        Source source = table.choice("from", Source.SUPPLY);
        Wiring.Feed feed = WiredFeed.read(table);
        List<Wiring.Point> points = points(table, pixels);
        double pixelsPerMetre = table.number("pixels_per_m", 1, MOST_PIXELS_PER_M, USUAL_PIXELS_PER_M);
        double loopOhms = loopOhmsPerMetre(table);
        boolean fiveVolts = volts <= HIGHEST_5_V;
        double full = fiveVolts ? FULL_COLOUR_V : FULL_COLOUR_SHARE * volts;
        double least = fiveVolts ? LEAST_V : LEAST_SHARE * volts;
        return new Wiring.Strip(
                source == Source.BOARD,
                feed,
                points,
                pixelsPerMetre,
                loopOhms,
                table.number("full_colour_V", 1, SupplySection.MOST_VOLTS, full),
                table.number("least_V", 1, SupplySection.MOST_VOLTS, least),
                table.number("pwm_Hz", 1, MOST_HZ, USUAL_PWM_HZ));
    }

    private static double loopOhmsPerMetre(Table table) {
        if (table.has("loop_ohm_per_m")) {
            return table.needNumber("loop_ohm_per_m", 0.001, 100);
        }
        double micrometres = table.number("copper_um", 1, 1000, USUAL_COPPER_UM);
        double millimetres = table.number("copper_mm", 0.1, 100, USUAL_COPPER_MM);
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
