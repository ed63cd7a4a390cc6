package dev.lampwright.tool.fit;

import java.util.List;

/**
 * A straight-line model fitted to readings: ordinary least squares by Householder's reflections (G. H. Golub and C. F. Van Loan, Matrix
 * Computations, section 5.3; from memory), which never forms the squares, so no precision is lost.
 */
final class LeastSquares {
    private static final double SINGULAR = 1e-10;

    private final double[] values;
    private final double[] errors;
    private final double[] residuals;
    private final double deviation;

    private LeastSquares(double[] values, double[] errors, double[] residuals, double deviation) {
        this.values = values;
        this.errors = errors;
        this.residuals = residuals;
        this.deviation = deviation;
    }

    /**
     * Fits.
     *
     * @param rows the factors of each reading, equally many in each row; fewer than there are readings
     * @param readings the readings
     * @return the fit
     * @throws IllegalArgumentException if the rows do not determine all values
     */
    static LeastSquares of(List<double[]> rows, double[] readings) {
        int unknowns = rows.get(0).length;
        double[][] a = rows.stream().map(double[]::clone).toArray(double[][]::new);
        double[] b = readings.clone();
        for (int column = 0; column < unknowns; column++) {
            reflect(a, b, column);
        }
        double[] values = solve(a, b, unknowns);
        double[] residuals = residuals(rows, readings, values);
        double squares = 0;
        for (double residual : residuals) {
            squares += residual * residual;
        }
        double deviation = Math.sqrt(squares / (readings.length - unknowns));
        return new LeastSquares(values, errors(a, unknowns, deviation), residuals, deviation);
    }

    /** The fitted values, one for each factor. */
    double value(int index) {
        return values[index];
    }

    /** The standard error of a value. */
    double error(int index) {
        return errors[index];
    }

    /** How far a reading is from the model. */
    double residual(int reading) {
        return residuals[reading];
    }

    /** The standard deviation of the readings from the model. */
    double deviation() {
        return deviation;
    }

    /** The reading that is furthest from the model. */
    int worst() {
        int worst = 0;
        for (int i = 1; i < residuals.length; i++) {
            worst = Math.abs(residuals[i]) > Math.abs(residuals[worst]) ? i : worst;
        }
        return worst;
    }

    private static void reflect(double[][] a, double[] b, int column) {
        double norm = 0;
        for (int row = column; row < a.length; row++) {
            norm = Math.hypot(norm, a[row][column]);
        }
        if (norm < SINGULAR) {
            throw new IllegalArgumentException("the readings do not tell all values apart");
        }
        double[] mirror = new double[a.length];
        for (int row = column; row < a.length; row++) {
            mirror[row] = a[row][column];
        }
        mirror[column] += Math.copySign(norm, mirror[column]);
        double square = 0;
        for (double part : mirror) {
            square += part * part;
        }
        for (int other = column; other < a[0].length; other++) {
            double along = 0;
            for (int row = column; row < a.length; row++) {
                along += mirror[row] * a[row][other];
            }
            for (int row = column; row < a.length; row++) {
                a[row][other] -= 2 * along / square * mirror[row];
            }
        }
        double along = 0;
        for (int row = column; row < a.length; row++) {
            along += mirror[row] * b[row];
        }
        for (int row = column; row < a.length; row++) {
            b[row] -= 2 * along / square * mirror[row];
        }
    }

    private static double[] solve(double[][] upper, double[] right, int unknowns) {
        double[] values = new double[unknowns];
        for (int row = unknowns - 1; row >= 0; row--) {
            double sum = right[row];
            for (int column = row + 1; column < unknowns; column++) {
                sum -= upper[row][column] * values[column];
            }
            values[row] = sum / upper[row][row];
        }
        return values;
    }

    private static double[] residuals(List<double[]> rows, double[] readings, double[] values) {
        double[] residuals = readings.clone();
        for (int i = 0; i < readings.length; i++) {
            for (int k = 0; k < values.length; k++) {
                residuals[i] -= rows.get(i)[k] * values[k];
            }
        }
        return residuals;
    }

    /** Square roots of the diagonal of (RᵀR)⁻¹, times the deviation: row norms of R⁻¹. */
    private static double[] errors(double[][] upper, int unknowns, double deviation) {
        double[] squares = new double[unknowns];
        for (int column = 0; column < unknowns; column++) {
            double[] unit = new double[unknowns];
            unit[column] = 1;
            double[] inverse = solve(upper, unit, unknowns);
            for (int row = 0; row < unknowns; row++) {
                squares[row] += inverse[row] * inverse[row];
            }
        }
        double[] errors = new double[unknowns];
        for (int i = 0; i < unknowns; i++) {
            errors[i] = deviation * Math.sqrt(squares[i]);
        }
        return errors;
    }
}
