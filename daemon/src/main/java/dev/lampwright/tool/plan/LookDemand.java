package dev.lampwright.tool.plan;

/** What one look asks for, before any ceiling, moment by moment over its cycle. */
public interface LookDemand {
    /** Takes moments. */
    @FunctionalInterface
    interface Taker {
        /**
         * Takes one moment.
         *
         * @param strip duty of each channel of each pixel, 0 to 1, in the strip's order; may be used again for the next moment
         * @param dimmers duty of each dimmer, 0 to 1; likewise
         */
        void take(double[] strip, double[] dimmers);
    }

    /**
     * What to call it.
     *
     * @return the look's name
     */
    String name();

    /**
     * Hands over moments that lie evenly over one cycle, or over long enough to stand for it.
     *
     * @param taker gets one call a moment, at least one
     */
    void moments(Taker taker);
}
