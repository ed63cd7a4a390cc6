package dev.lampwright.tool.survey;

import java.util.Arrays;

/**
 * When a number became another one. When it is full every second step goes, and from then on only every second of those that come is
 * kept, and each that turns back.
 */
final class Steps {
    private static final int MOST = 512;
    private static final int FIRST = 8;

    private double[] seconds = new double[FIRST];
    private double[] values = new double[FIRST];
    private int size;
    private int stride = 1;
    private int toSkip;
    private double last = Double.NaN;
    private double direction;

    /**
     * Takes a number in.
     *
     * @param second when it came, in s since any moment; never before the one before
     * @param value the number
     */
    void add(double second, double value) {
        if (value == last) {
            return;
        }
        boolean turns = (value - last) * direction < 0;
        direction = value - last;
        last = value;
        if (toSkip > 0 && !turns) {
            toSkip--;
            return;
        }
        if (size == MOST) {
            thinOut();
        } else if (size == seconds.length) {
            seconds = Arrays.copyOf(seconds, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
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

    /** When a step was, in s, by its place from 0 on. */
    double second(int i) {
        return seconds[i];
    }

    /** What it went to, by its place from 0 on. */
    double value(int i) {
        return values[i];
    }

    /** The last step until a time; −1 before the first. */
    int until(double second) {
        int found = Arrays.binarySearch(seconds, 0, size, second);
        return found >= 0 ? found : -found - 2;
    }

    /** The number at a time; NaN before the first. */
    double at(double second) {
        int step = until(second);
        return step < 0 ? Double.NaN : values[step];
    }
}
