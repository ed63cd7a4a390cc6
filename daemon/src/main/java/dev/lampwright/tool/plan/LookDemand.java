package dev.lampwright.tool.plan;

/** What one look demands, before any ceiling, moment by moment over its cycle. */
public interface LookDemand {
    /** Takes moments. */
    @FunctionalInterface
    interface Taker {
        /**
         * Takes one moment.
         *
         * @param strip duty of each channel of each pixel, 0 to 1, in the strip's order; may be reused for the next moment
         * @param dimmers duty of each dimmer, 0 to 1; likewise
         */
        void take(double[] strip, double[] dimmers);
    }

    /**
     * Its name.
     *
     * @return the look's name
     */
    String name();

    /**
     * Delivers moments spread evenly over one cycle, or over a time long enough to represent it.
     *
     * @param taker called once per moment, at least once
     */
    void moments(Taker taker);
}
