package dev.lampwright.tool.plan;

import java.util.List;

/**
 * The current demand of one kind of light.
 *
 * @param name {@code full white}, {@code ceiling}, or the name of a look
 * @param draws what each supply delivers, by its index, including the computer if a supply feeds it
 * @param connectors the current through the connector of each wire, in the order of {@link Plan#runs}
 */
public record Demand(String name, List<Draw> draws, List<Draw> connectors) {
    /**
     * What one supply delivers for one kind of light.
     *
     * @param meanAmps mean over the cycle, in A
     * @param peakAmps at the moment of greatest load, in A
     * @param dimmed whether the ceiling had to limit it
     */
    public record Draw(double meanAmps, double peakAmps, boolean dimmed) {
        /**
         * A constant draw.
         *
         * @param amps A
         * @return the draw
         */
        static Draw steady(double amps) {
            return new Draw(amps, amps, false);
        }
    }

    /** Keeps copies of the lists. */
    public Demand {
        draws = List.copyOf(draws);
        connectors = List.copyOf(connectors);
    }
}
