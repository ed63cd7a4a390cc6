package dev.lampwright.colour;

import java.util.Arrays;

/** Three rows of three, for the linear steps between colour spaces. */
final class Matrix {
    private final double[] cells;

    /**
     * Creates a matrix.
     *
     * @param cells nine numbers, row by row
     */
    Matrix(double... cells) {
        this.cells = cells.clone();
    }

    /**
     * Creates a matrix with numbers on its diagonal only.
     *
     * @param first of the first row
     * @param second of the second row
     * @param third of the third row
     * @return the matrix
     */
    static Matrix diagonal(double first, double second, double third) {
        return new Matrix(first, 0, 0, 0, second, 0, 0, 0, third);
    }

    /**
     * Creates a matrix from columns.
     *
     * @param first the first column
     * @param second the second column
     * @param third the third column
     * @return the matrix
     */
    static Matrix columns(Triple first, Triple second, Triple third) {
        return new Matrix(
                first.first(),
                second.first(),
                third.first(),
                first.second(),
                second.second(),
                third.second(),
                first.third(),
                second.third(),
                third.third());
    }

    /**
     * A number of the matrix.
     *
     * @param row 0 to 2
     * @param column 0 to 2
     * @return the number there
     */
    double cell(int row, int column) {
        return cells[3 * row + column];
    }

    /**
     * Multiplies with a column.
     *
     * @param column the column
     * @return this × column
     */
    Triple times(Triple column) {
        return new Triple(dot(0, column), dot(1, column), dot(2, column));
    }

    /**
     * Multiplies with a matrix.
     *
     * @param right what is applied first
     * @return this × right
     */
    Matrix times(Matrix right) {
        return columns(times(right.column(0)), times(right.column(1)), times(right.column(2)));
    }

    /**
     * Multiplies with a number.
     *
     * @param factor the number
     * @return this × factor
     */
    Matrix times(double factor) {
        return times(diagonal(factor, factor, factor));
    }

    /**
     * Inverts the matrix.
     *
     * @return the inverse
     * @throws ArithmeticException if there is none
     */
    Matrix inverse() {
        double determinant = cell(0, 0) * cofactor(0, 0) + cell(0, 1) * cofactor(0, 1) + cell(0, 2) * cofactor(0, 2);
        if (determinant == 0) {
            throw new ArithmeticException("the matrix has no inverse");
        }
        double[] inverse = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                inverse[3 * row + column] = cofactor(column, row) / determinant;
            }
        }
        return new Matrix(inverse);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Matrix matrix && Arrays.equals(cells, matrix.cells);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(cells);
    }

    private Triple column(int column) {
        return new Triple(cell(0, column), cell(1, column), cell(2, column));
    }

    private double dot(int row, Triple column) {
        return cell(row, 0) * column.first() + cell(row, 1) * column.second() + cell(row, 2) * column.third();
    }

    /** Rows and columns wrap around, which gives the cofactor its sign. */
    private double cofactor(int row, int column) {
        int below = (row + 1) % 3;
        int last = (row + 2) % 3;
        int right = (column + 1) % 3;
        int end = (column + 2) % 3;
        return cell(below, right) * cell(last, end) - cell(below, end) * cell(last, right);
    }
}
