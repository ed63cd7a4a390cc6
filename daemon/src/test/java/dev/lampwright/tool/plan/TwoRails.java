package dev.lampwright.tool.plan;

import java.util.Arrays;

/**
 * A strip as a network of two rails, solved node by node, for comparison with {@link ResistorLadder}, with which it shares no code: the
 * plus rail and the minus rail each have a node at every pixel, wires go from both nodes of a point to a supply, and Gauss's elimination
 * with partial pivoting solves Kirchhoff's current law.
 */
final class TwoRails {
    private final int pixels;
    private final double segmentOhms;
    private final double[] plus;
    private final double[] minus;

    /**
     * Solves it.
     *
     * @param volts of the supply
     * @param segmentOhms resistance of one rail between neighbours, in Ω
     * @param wires for each point its pixel, and the resistance of one of its two wires, in Ω
     * @param amps what each pixel draws from its plus to its minus, in A
     */
    TwoRails(double volts, double segmentOhms, double[][] wires, double[] amps) {
        pixels = amps.length;
        this.segmentOhms = segmentOhms;
        double[][] matrix = new double[2 * pixels][2 * pixels + 1];
        for (int i = 0; i < pixels; i++) {
            matrix[i][2 * pixels] = -amps[i];
            matrix[pixels + i][2 * pixels] = amps[i];
            if (i + 1 < pixels) {
                join(matrix, i, i + 1, segmentOhms);
                join(matrix, pixels + i, pixels + i + 1, segmentOhms);
            }
        }
        for (double[] wire : wires) {
            int at = (int) wire[0];
            matrix[at][at] += 1 / wire[1];
            matrix[at][2 * pixels] += volts / wire[1];
            matrix[pixels + at][pixels + at] += 1 / wire[1];
        }
        double[] solved = solve(matrix);
        plus = Arrays.copyOfRange(solved, 0, pixels);
        minus = Arrays.copyOfRange(solved, pixels, 2 * pixels);
    }

    /** Voltage at a pixel. */
    double volts(int pixel) {
        return plus[pixel] - minus[pixel];
    }

    /** Current of the plus rail from a pixel to the next one, in A. */
    double segment(int pixel) {
        return (plus[pixel] - plus[pixel + 1]) / segmentOhms;
    }

    /** Current through the minus wire of a point, in A. */
    double wire(int pixel, double ohms) {
        return minus[pixel] / ohms;
    }

    private static void join(double[][] matrix, int a, int b, double ohms) {
        matrix[a][a] += 1 / ohms;
        matrix[b][b] += 1 / ohms;
        matrix[a][b] -= 1 / ohms;
        matrix[b][a] -= 1 / ohms;
    }

    private static double[] solve(double[][] m) {
        int n = m.length;
        for (int column = 0; column < n; column++) {
            int best = column;
            for (int row = column + 1; row < n; row++) {
                best = Math.abs(m[row][column]) > Math.abs(m[best][column]) ? row : best;
            }
            double[] kept = m[column];
            m[column] = m[best];
            m[best] = kept;
            for (int row = column + 1; row < n; row++) {
                double factor = m[row][column] / m[column][column];
                for (int k = column; factor != 0 && k <= n; k++) {
                    m[row][k] -= factor * m[column][k];
                }
            }
        }
        double[] solved = new double[n];
        for (int row = n - 1; row >= 0; row--) {
            double sum = m[row][n];
            for (int k = row + 1; k < n; k++) {
                sum -= m[row][k] * solved[k];
            }
            solved[row] = sum / m[row][row];
        }
        return solved;
    }
}
