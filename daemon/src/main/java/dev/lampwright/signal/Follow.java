package dev.lampwright.signal;

/**
 * A signal scaled to bounds, so that anything can be followed from 0 to 1.
 *
 * @param signal what to follow
 * @param from value that counts as 0
 * @param to value that counts as 1; may be less than {@code from}, but not equal
 */
public record Follow(Signal signal, double from, double to) {
    /**
     * Follows a signal that already runs from 0 to 1.
     *
     * @param signal what to follow
     * @return it with the bounds 0 and 1
     */
    public static Follow of(Signal signal) {
        return new Follow(signal, 0, 1);
    }

    /**
     * Where a value is between the bounds.
     *
     * @param value the signal's value; NaN for unknown
     * @return 0 to 1; NaN for unknown
     */
    public double share(double value) {
        return Math.max(0, Math.min(1, (value - from) / (to - from)));
    }
}
