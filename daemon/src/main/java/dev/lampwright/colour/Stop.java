package dev.lampwright.colour;

import java.util.ArrayList;
import java.util.List;

/**
 * A colour and its place in a gradient.
 *
 * @param colour the colour
 * @param at the place, 0 to 1
 */
public record Stop(Colour colour, double at) {
    /**
     * Places colours evenly from 0 to 1, for a gradient that flows.
     *
     * @param colours one or more
     * @return the stops
     */
    public static List<Stop> evenly(List<Colour> colours) {
        return placed(colours, Math.max(1, colours.size() - 1));
    }

    /**
     * Gives each colour an equal stretch of 0 to 1, for a gradient in steps: the stops are where the stretches begin.
     *
     * @param colours one or more
     * @return the stops
     */
    public static List<Stop> stretches(List<Colour> colours) {
        return placed(colours, colours.size());
    }

    private static List<Stop> placed(List<Colour> colours, int parts) {
        List<Stop> stops = new ArrayList<>();
        for (Colour colour : colours) {
            stops.add(new Stop(colour, (double) stops.size() / parts));
        }
        return List.copyOf(stops);
    }
}
