package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** Compared with the ordinary least squares of Apache Commons Math 3.6.1. */
class LeastSquaresTest {
    private static void assertSameAsCommonsMath(List<double[]> rows, double[] readings) {
        OLSMultipleLinearRegression other = new OLSMultipleLinearRegression();
        other.setNoIntercept(true);
        other.newSampleData(readings, rows.toArray(double[][]::new));
        LeastSquares fit = LeastSquares.of(rows, readings);
        int unknowns = rows.get(0).length;
        double scale = 1e-9
                * IntStream.range(0, readings.length)
                        .mapToDouble(i -> Math.abs(readings[i]))
                        .max()
                        .orElse(1);
        assertArrayEquals(
                other.estimateRegressionParameters(),
                IntStream.range(0, unknowns).mapToDouble(fit::value).toArray(),
                scale);
        assertArrayEquals(
                other.estimateRegressionParametersStandardErrors(),
                IntStream.range(0, unknowns).mapToDouble(fit::error).toArray(),
                scale);
        assertArrayEquals(
                other.estimateResiduals(),
                IntStream.range(0, readings.length).mapToDouble(fit::residual).toArray(),
                scale);
        assertEquals(other.estimateRegressionStandardError(), fit.deviation(), scale);
    }

    @Test
    void asCommonsMathForAnyReadings() {
        Random random = new Random(27);
        for (int round = 0; round < 500; round++) {
            int unknowns = 1 + random.nextInt(5);
            int count = unknowns + 1 + random.nextInt(6);
            List<double[]> rows = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                rows.add(IntStream.range(0, unknowns)
                        .mapToDouble(k -> k == 0 ? 1 : random.nextDouble() * 300)
                        .toArray());
            }
            assertSameAsCommonsMath(rows, random.doubles(count, 0, 5000).toArray());
        }
    }

    @Test
    void asCommonsMathForThePatternsThatAreMeasured() {
        Random random = new Random(3);
        for (int pixels : new int[] {1, 7, 60, 300}) {
            StripModel strip = new StripModel("GRBW", pixels, List.of(11.0, 12.5, 10.0, 18.0), 0.7);
            CurrentRig rig = CurrentRig.of(strip, 2500);
            assertSameAsCommonsMath(rig.rows(), rig.readings(() -> random.nextGaussian() * 2));
        }
    }

    @Test
    void refusesWhatDoesNotTellTheValuesApart() {
        List<double[]> rows = List.of(new double[] {1, 2}, new double[] {2, 4}, new double[] {3, 6});
        assertThrows(IllegalArgumentException.class, () -> LeastSquares.of(rows, new double[] {1, 2, 3}));
    }
}
