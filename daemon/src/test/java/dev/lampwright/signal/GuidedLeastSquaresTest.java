package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class GuidedLeastSquaresTest {
    private static final double MILLION = 1e6;

    /** Deflection of a load cell at 20 loads, twice: NIST Statistical Reference Datasets, linear regression, "Pontius". */
    private static final double[] PONTIUS = {
        .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001, 1.30822, 1.41599,
        1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, .11052, .22018, .32939, .43886, .54798, .65739,
        .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445,
        2.06177, 2.16829
    };

    private final GuidedLeastSquares squares = new GuidedLeastSquares();

    private void addPontius() {
        for (int i = 0; i < PONTIUS.length; i++) {
            double millions = 0.15 * (i % 20 + 1);
            squares.add(millions, millions * millions, PONTIUS[i]);
        }
    }

    /** The certified values of the same page. The loads are taken in millions, so that the matrix is well-conditioned. */
    @Test
    void agreesWithCertifiedValues() {
        addPontius();
        assertTrue(squares.solve(0, 0, Double.POSITIVE_INFINITY));
        assertEquals(0.673565789473684E-03, squares.c(), 1e-13);
        assertEquals(0.732059160401003E-06 * MILLION, squares.a(), 1e-12);
        assertEquals(-0.316081871345029E-14 * MILLION * MILLION, squares.b(), 1e-12);
        assertEquals(0.205177424076185E-03, squares.scatter(), 1e-9);
        assertEquals(0.107938612033077E-03, squares.error(1, 0, 0), 1e-9);
        assertEquals(0.157817399981659E-09 * MILLION, squares.error(0, 1, 0), 1e-9);
        assertEquals(0.486652849992036E-16 * MILLION * MILLION, squares.error(0, 0, 1), 1e-9);
    }

    /** What is known beforehand is one more reading of b: the weighted mean of two independent ones, by the textbook. */
    @Test
    void drawsTowardsWhatIsKnownByItsWeight() {
        addPontius();
        squares.solve(0, 0, Double.POSITIVE_INFINITY);
        double alone = squares.b();
        double within = squares.error(0, 0, 1);
        double known = alone + within / 10;
        assertTrue(squares.solve(squares.scatter(), known, within));
        assertEquals((alone + known) / 2, squares.b(), within / 500);
        assertTrue(squares.solve(0, known, within * 1e-6));
        assertEquals(known, squares.b(), within / 500);
    }

    @Test
    void pointsThatDoNotSayAreToldApart() {
        for (int i = 0; i < 9; i++) {
            squares.add(3, 5, i);
        }
        assertFalse(squares.solve(0.1, 0, Double.POSITIVE_INFINITY));
        squares.clear();
        assertFalse(squares.solve(0.1, 0, 1));
    }
}
