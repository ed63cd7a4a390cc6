package dev.lampwright.signal;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class HeatFitTest {
    /** A good deal beyond any heater's, so that it says nothing. */
    private static final double NOTHING_KNOWN = 1e3;

    private final Samples samples = new Samples();
    private final HeatFit fit = new HeatFit();

    private void heat(double end, double tau, double untilS, double everyS) {
        for (double t = 0; t <= untilS; t += everyS) {
            samples.add(t, end + (22 - end) * Math.exp(-t / tau));
        }
    }

    /** T∞ + (T0 − T∞)·e^(−t/τ), of which the goal is reached at τ·ln((T∞ − T0) ÷ (T∞ − goal)). */
    @ParameterizedTest
    @CsvSource({
        "132, 500, 60, 100, 1",
        "132, 500, 100, 300, 2",
        "492, 133, 213, 40, 1",
        "330, 200, 258, 150, 0.5",
        "75, 300, 60, 200, 5"
    })
    void findsTheClosedFormsTime(double end, double tau, double goal, double untilS, double everyS) {
        heat(end, tau, untilS, everyS);
        fit.fit(samples, 0, goal, 0, NOTHING_KNOWN);
        double whole = tau * Math.log((end - 22) / (end - goal));
        double left = whole - samples.time(samples.size() - 1);
        assertEquals(left, fit.secondsLeft(), 0.02 * left);
        assertEquals(1 / tau, fit.rate(), 0.02 / tau);
    }

    /**
     * A first-order response that somebody has measured: NIST Statistical Reference Datasets, nonlinear regression, "Misra1a", y = b1·(1 −
     * e^(−b2·x)) with the certified b2 = 5.5015643181E-04, standard error 7.2668688436E-06. All but the last two points are fitted,
     * and those two are forecast.
     */
    @Test
    void forecastsAMeasuredResponse() {
        double[] y = {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40};
        double[] x = {77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1};
        for (int i = 0; i < x.length; i++) {
            samples.add(x[i], y[i]);
        }
        fit.fit(samples, 0, 75.47, 0, NOTHING_KNOWN);
        assertEquals(5.5015643181E-04, fit.rate(), 4 * 7.2668688436E-06);
        assertEquals(689.1 - 593.1, fit.secondsLeft(), 2 * fit.errorS());
        assertEquals(689.1 - 593.1, fit.secondsLeft(), 0.05 * 96);
        fit.fit(samples, 0, 81.78, 0, NOTHING_KNOWN);
        assertEquals(760.0 - 593.1, fit.secondsLeft(), 2 * fit.errorS());
        assertEquals(760.0 - 593.1, fit.secondsLeft(), 0.05 * 167);
    }

    /** With noise as a sensor has it, nineteen in twenty are within two standard errors; some slack, for it is a first-order error. */
    @Test
    void theErrorIsWhatItSays() {
        SplittableRandom chance = new SplittableRandom(11);
        int within = 0;
        int all = 400;
        for (int i = 0; i < all; i++) {
            samples.clear();
            for (int t = 0; t <= 60; t++) {
                samples.add(t, 492 + (22 - 492) * Math.exp(-t / 133.0) + 0.5 * chance.nextGaussian());
            }
            fit.fit(samples, 0, 213, 0, NOTHING_KNOWN);
            double left = 133 * Math.log((492 - 22) / (492 - 213.0)) - 60;
            within += Math.abs(fit.secondsLeft() - left) <= 2 * fit.errorS() ? 1 : 0;
        }
        assertTrue(within > 0.90 * all, "within two errors: " + within + " of " + all);
        assertTrue(within < 0.99 * all, "the error is too large: " + within + " of " + all);
    }

    @Test
    void isUnknownWithoutEnoughSamples() {
        assertUnknown();
        for (int t = 0; t < HeatFit.LEAST_SAMPLES - 1; t++) {
            samples.add(t, 22 + t);
            fit.fit(samples, 0, 60, 0.01, 0.01);
            assertUnknown();
        }
    }

    @Test
    void isUnknownWhileNothingGetsHotter() {
        for (int t = 0; t < 20; t++) {
            samples.add(t, 30 - 0.1 * t);
        }
        fit.fit(samples, 0, 60, 0, NOTHING_KNOWN);
        assertUnknown();
    }

    @Test
    void forgetsTheFitBefore() {
        heat(132, 500, 100, 1);
        fit.fit(samples, 0, 60, 0, NOTHING_KNOWN);
        assertAbove(0, fit.secondsLeft());
        samples.clear();
        fit.fit(samples, 0, 60, 0, NOTHING_KNOWN);
        assertUnknown();
    }

    private void assertUnknown() {
        assertTrue(Double.isNaN(fit.secondsLeft()) && Double.isNaN(fit.errorS()), () -> "" + fit.secondsLeft());
    }
}
