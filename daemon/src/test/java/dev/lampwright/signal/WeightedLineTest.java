package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

final class WeightedLineTest {
    private final WeightedLine line = new WeightedLine();

    /** The first of four sets by F. J. Anscombe, "Graphs in Statistical Analysis", The American Statistician 27 (1973), with its regression. */
    @Test
    void findsAnscombesLine() {
        double[] x = {10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5};
        double[] y = {8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68};
        for (int i = 0; i < x.length; i++) {
            line.add(x[i], y[i], 1);
        }
        assertEquals(0.5001, line.slope(), 1e-4);
        assertEquals(3.0001, line.at(0), 1e-4);
        // 13.763 is the residual sum of squares; the slope's standard error is 0.1179.
        assertEquals(13.763, line.rest(), 1e-3);
        double residual = line.rest() / (x.length - 2);
        double slopes = residual * (line.variance(10) - line.variance(9));
        assertEquals(0.1179, Math.sqrt(slopes), 1e-4);
    }

    /** A point that counts twice is like two points. */
    @Test
    void weighsPoints() {
        line.add(0, 0, 1);
        line.add(1, 3, 2);
        line.add(2, 2, 1);
        WeightedLine other = new WeightedLine();
        other.add(5, 5, 1);
        other.take(line);
        line.clear();
        for (double[] point : new double[][] {{0, 0}, {1, 3}, {1, 3}, {2, 2}}) {
            line.add(point[0], point[1], 1);
        }
        assertEquals(line.slope(), other.slope(), 1e-12);
        assertEquals(line.at(7), other.at(7), 1e-12);
        assertEquals(line.variance(7), other.variance(7), 1e-12);
    }
}
