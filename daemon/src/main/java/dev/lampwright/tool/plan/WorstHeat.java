package dev.lampwright.tool.plan;

import java.util.Arrays;

/**
 * The greatest heating that pulsed pixels can cause at one place that their currents flow through. A pixel draws its dark current all the
 * time, and the rest of its full current in pulses; the ceiling holds the mean of all. Heat follows the mean of the current squared.
 *
 * <p>If pulses begin together, the pixels that are lit at any moment are the brighter ones, so the current is a sequence of sets of pixels.
 * With a given mean, the mean square is greatest for a mixture of two numbers of pixels, each taken from those that weigh most at this
 * place: the upper concave envelope of the square over the number of lit pixels. For a place that carries the whole strip, this is √(mean ×
 * full) except for the dark current.
 */
final class WorstHeat {
    private WorstHeat() {}

    /**
     * For pulses that begin together.
     *
     * @param weights for each pixel, which share of its current flows through the place; negative for the other direction
     * @param dark what each pixel draws all the time, in A
     * @param full what it draws at full, in A
     * @param ceiling the most that all may draw together, as a mean, in A
     * @return the greatest RMS current, in A
     */
    static double together(double[] weights, double dark, double full, double ceiling) {
        double[] rising = weights.clone();
        Arrays.sort(rising);
        double[] falling = rising.clone();
        for (int i = 0; i < falling.length; i++) {
            falling[i] = rising[rising.length - 1 - i];
        }
        double lit = lit(weights.length, dark, full, ceiling);
        double steady = dark * Arrays.stream(weights).sum();
        return Math.sqrt(Math.max(
                envelope(squares(falling, steady, full - dark), lit),
                envelope(squares(rising, steady, full - dark), lit)));
    }

    /**
     * For pixels that pulse independently of each other. Then the variances add up on top of the squared mean; a pulse contributes at most
     * a quarter of its height squared.
     *
     * @param weights as above
     * @param dark as above
     * @param full as above
     * @param ceiling as above
     * @return an upper bound of the RMS current, in A
     */
    static double apart(double[] weights, double dark, double full, double ceiling) {
        double pulse = full - dark;
        double lit = lit(weights.length, dark, full, ceiling);
        double steady = dark * Arrays.stream(weights).sum();
        double[] sorted = weights.clone();
        Arrays.sort(sorted);
        double most = 0;
        double least = 0;
        for (int i = 0; i < sorted.length; i++) {
            double share = Math.max(0, Math.min(1, lit - i));
            most += share * Math.max(0, sorted[sorted.length - 1 - i]);
            least += share * Math.min(0, sorted[i]);
        }
        double mean = Math.max(Math.abs(steady + pulse * most), Math.abs(steady + pulse * least));
        double spread =
                pulse * pulse / 4 * Arrays.stream(weights).map(w -> w * w).sum();
        return Math.min(Math.sqrt(mean * mean + spread), together(weights, dark, full, ceiling));
    }

    /** How many pixels at full the ceiling allows in addition to the dark current of all; a fraction for the last. */
    private static double lit(int pixels, double dark, double full, double ceiling) {
        double room = Math.max(0, ceiling - dark * pixels);
        return full > dark ? Math.min(pixels, room / (full - dark)) : 0;
    }

    private static double[] squares(double[] weights, double steady, double pulse) {
        double[] squares = new double[weights.length + 1];
        double amps = steady;
        squares[0] = amps * amps;
        for (int i = 0; i < weights.length; i++) {
            amps += pulse * weights[i];
            squares[i + 1] = amps * amps;
        }
        return squares;
    }

    /** The maximum, up to a given place, of the upper concave envelope of values at 0, 1, 2 and so on. */
    private static double envelope(double[] values, double at) {
        int[] hull = new int[values.length];
        int size = 0;
        for (int i = 0; i < values.length; i++) {
            while (size > 1 && slope(values, hull[size - 2], hull[size - 1]) <= slope(values, hull[size - 1], i)) {
                size--;
            }
            hull[size++] = i;
        }
        double most = values[0];
        for (int k = 1; k < size && hull[k - 1] < at; k++) {
            double end = Math.min(at, hull[k]);
            most = Math.max(most, values[hull[k - 1]] + (end - hull[k - 1]) * slope(values, hull[k - 1], hull[k]));
        }
        return most;
    }

    private static double slope(double[] values, int from, int to) {
        return (values[to] - values[from]) / (to - from);
    }
}
