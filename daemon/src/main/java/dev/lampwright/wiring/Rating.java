package dev.lampwright.wiring;

/**
 * What a part carries continuously.
 *
 * @param amps A (RMS), 0 or more
 * @param source where the figure comes from, in a few words: a standard, a data sheet, or that it is assumed
 */
public record Rating(double amps, String source) {
    /**
     * The weaker of two.
     *
     * @param other another rating
     * @return the one with less current; this one if they are equal
     */
    Rating or(Rating other) {
        return other.amps < amps ? other : this;
    }
}
