package dev.lampwright.signal;

/**
 * A number that moves from value to value in a straight line. It takes as long as the values are apart in time, so it arrives when
 * the next is due: it never overshoots, and is never later than one message. A first value, and one after an unknown, is taken at
 * once; when a message is late, it waits where it has arrived.
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
     * Takes a value from a message. One that says the same as before does not disturb the way there.
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
