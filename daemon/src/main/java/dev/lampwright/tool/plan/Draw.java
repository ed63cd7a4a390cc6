package dev.lampwright.tool.plan;

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
