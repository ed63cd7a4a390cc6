package dev.lampwright.tool.survey;

/**
 * Numbers with their times, thinned out so that they never take more room: when it is full, every second one goes, and from then on
 * only every second of those that come is kept.
 */
final class Series {
    private static final int MOST = 256;

    private final double[] values = new double[MOST];
    private final double[] seconds = new double[MOST];
    private int size;
    private int stride = 1;
    private int toSkip;

    /**
     * Adds a number.
     *
     * @param second when it came, in s since any moment; never before the one before
     * @param value the number
     */
    void add(double second, double value) {
        if (toSkip > 0) {
            toSkip--;
            return;
        }
        if (size == MOST) {
            thinOut();
        }
        seconds[size] = second;
        values[size] = value;
        size++;
        toSkip = stride - 1;
    }

    private void thinOut() {
        size = MOST / 2;
        for (int i = 0; i < size; i++) {
            seconds[i] = seconds[2 * i];
            values[i] = values[2 * i];
        }
        stride *= 2;
    }

    /** How many there are. */
    int size() {
        return size;
    }

    /** A number, by its place from 0 on. */
    double value(int i) {
        return values[i];
    }

    /** When a number came, in s, by its place from 0 on. */
    double second(int i) {
        return seconds[i];
    }

    /**
     * The number that stood at a time.
     *
     * @param second the time
     * @return the last that came until then; NaN before the first
     */
    double at(double second) {
        int low = 0;
        int high = size;
        while (low < high) {
            int middle = (low + high) / 2;
            if (seconds[middle] <= second) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? Double.NaN : values[low - 1];
    }
}
