package dev.lampwright.tool.plan;

import java.util.List;

/**
 * What one way of lighting asks for.
 *
 * @param name {@code full white}, {@code ceiling}, or the name of a look
 * @param draws what each supply gives, by its index, with the computer where it is fed by one
 * @param connectors what flows through the connector of each wire, in the order of {@link Plan#runs}
 */
public record Demand(String name, List<Draw> draws, List<Draw> connectors) {
    /**
     * What one supply gives for one way of lighting.
     *
     * @param meanAmps mean over the cycle, in A
     * @param peakAmps at the heaviest moment, in A
     * @param dimmed whether the ceiling had to hold it back
     */
    public record Draw(double meanAmps, double peakAmps, boolean dimmed) {
        /**
         * A draw that never changes.
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
