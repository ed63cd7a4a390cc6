package dev.lampwright.tool.survey;

import java.util.Arrays;

/**
 * Numbers with their times, thinned out so that they take bounded room: when it is full, every second number is dropped, and from then on
 * only every second new one is kept.
 */
final class Series {
    private static final int FIRST = 8;

    private final int most;
    private double[] seconds = new double[FIRST];
    private double[] values = new double[FIRST];
    private int size;
    private int stride = 1;
    private int toSkip;

    /**
     * Makes an empty one.
     *
     * @param most its capacity, an even number, 8 or more
     */
    Series(int most) {
        this.most = most;
    }

    /**
     * Adds a number, unless it is one to skip.
     *
     * @param second when it came, in s since any moment; never earlier than the previous one
     * @param value the number
     */
    void add(double second, double value) {
        if (toSkip > 0) {
            toSkip--;
        } else {
            keep(second, value);
        }
    }

    /** Adds a number that must not be left out; as {@link #add} otherwise. */
    void keep(double second, double value) {
        if (size == most) {
            thinOut();
        } else if (size == seconds.length) {
            int room = Math.min(most, 2 * size);
            seconds = Arrays.copyOf(seconds, room);
            values = Arrays.copyOf(values, room);
        }
        seconds[size] = second;
        values[size] = value;
        size++;
        toSkip = stride - 1;
    }

    private void thinOut() {
        size = most / 2;
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
     * The place of the last number that came up to a given time.
     *
     * @param second the time
     * @return its place; −1 before the first
     */
    int until(double second) {
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
        return low - 1;
    }

    /**
     * The last number that came up to a given time.
     *
     * @param second the time
     * @return the number; NaN before the first
     */
    double at(double second) {
        int place = until(second);
        return place < 0 ? Double.NaN : values[place];
    }
}
