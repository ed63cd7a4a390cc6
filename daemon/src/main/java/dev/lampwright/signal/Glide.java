package dev.lampwright.signal;

/**
 * A number that moves from value to value in a straight line. It takes as long as the interval between the values, so it arrives when the
 * next is due: it never overshoots, and lags by one message at most. The first value, and one after an unknown, applies at once; when a
 * message is late, it waits at the last value.
 */
final class Glide implements Track {
    private static final long SHORTEST_NANOS = 50_000_000L;
    private static final long LONGEST_NANOS = 2_000_000_000L;

    private double from = Double.NaN;
    private double to = Double.NaN;
    private long startNanos;
    private long lengthNanos = SHORTEST_NANOS;
    private long heardAtNanos;

    /**
     * Sets a value from a message. A repeated value does not disturb the movement.
     *
     * @param value where to go; NaN for unknown
     * @param atNanos when the value came
     */
    void to(double value, long atNanos) {
        long sinceLast = atNanos - heardAtNanos;
        heardAtNanos = atNanos;
        if (Double.compare(value, to) == 0) {
            return;
        }
        double here = at(atNanos);
        from = Double.isNaN(here) || Double.isNaN(value) ? value : here;
        to = value;
        startNanos = atNanos;
        lengthNanos = Math.max(SHORTEST_NANOS, Math.min(LONGEST_NANOS, sinceLast));
    }

    @Override
    public double at(long nanos) {
        double share = (double) (nanos - startNanos) / lengthNanos;
        if (share >= 1) {
            return to;
        }
        double value = from + (to - from) * Math.max(0, share);
        return Math.max(Math.min(from, to), Math.min(Math.max(from, to), value));
    }

    @Override
    public long stillFor(long nanos) {
        return nanos - startNanos >= lengthNanos || Double.compare(from, to) == 0 ? Signals.FOREVER : 0;
    }
}
