package dev.lampwright.signal;

/**
 * Values over time in a bounded space: means over equal spans of time, whose length doubles whenever the space is full. So the whole past
 * since {@link #clear} is covered, evenly, however long it is and however often values come. Allocates nothing.
 */
final class Samples {
    /** The maximum number of means kept. */
    static final int MOST = 64;

    private static final double SHORTEST_SPAN_S = 0.5;

    private final long[] spans = new long[MOST];
    private final int[] counts = new int[MOST];
    private final double[] times = new double[MOST];
    private final double[] values = new double[MOST];
    private double spanS = SHORTEST_SPAN_S;
    private int size;

    /** Forgets everything. */
    void clear() {
        size = 0;
        spanS = SHORTEST_SPAN_S;
    }

    /**
     * Adds a value.
     *
     * @param atS when, in s, no earlier than the previous one
     * @param value the value
     */
    void add(double atS, double value) {
        long span = (long) Math.floor(atS / spanS);
        if (size > 0 && spans[size - 1] == span) {
            join(size - 1, atS, value, 1);
            return;
        }
        while (size == MOST) {
            halve();
            span = (long) Math.floor(atS / spanS);
        }
        append(span, atS, value, 1);
    }

    private void halve() {
        spanS *= 2;
        int old = size;
        size = 0;
        for (int i = 0; i < old; i++) {
            long span = Math.floorDiv(spans[i], 2);
            if (size > 0 && spans[size - 1] == span) {
                join(size - 1, times[i], values[i], counts[i]);
            } else {
                append(span, times[i], values[i], counts[i]);
            }
        }
    }

    private void append(long span, double atS, double value, int count) {
        spans[size] = span;
        times[size] = atS;
        values[size] = value;
        counts[size] = count;
        size++;
    }

    private void join(int at, double atS, double value, int count) {
        counts[at] += count;
        double weight = (double) count / counts[at];
        times[at] += (atS - times[at]) * weight;
        values[at] += (value - values[at]) * weight;
    }

    /**
     * How many means there are.
     *
     * @return 0 to {@link #MOST}
     */
    int size() {
        return size;
    }

    /**
     * The mean time of one.
     *
     * @param at which, 0 for the oldest
     * @return s
     */
    double time(int at) {
        return times[at];
    }

    /**
     * The mean value of one.
     *
     * @param at which, 0 for the oldest
     * @return in the unit of the values
     */
    double value(int at) {
        return values[at];
    }
}
