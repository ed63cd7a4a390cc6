package dev.lampwright.signal;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class CurveFitTest {
    private final Samples samples = new Samples();
    private final CurveFit fit = new CurveFit();

    /** Nothing is known except that nothing throttles. */
    private static double unthrottled(int curve, double unitS) {
        HeatingCurves.Curve known = HeatingCurves.curve(curve);
        return unitS > 0 && known.band() == HeatingCurves.NO_BAND ? known.stands() : 0;
    }

    private void heat(double end, double tau, double untilS, double everyS) {
        for (double t = 0; t <= untilS; t += everyS) {
            samples.add(t, end + (22 - end) * Math.exp(-t / tau));
        }
    }

    /** T∞ + (T0 − T∞)·e^(−t/τ), which reaches the goal at τ·ln((T∞ − T0) ÷ (T∞ − goal)). */
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
        fit.fit(samples, 0, 22, goal + 2, goal, CurveFitTest::unthrottled);
        double left = tau * Math.log((end - 22) / (end - goal)) - samples.time(samples.size() - 1);
        assertEquals(left, fit.secondsLeft(), 0.1 * left);
        assertEquals(left, fit.secondsLeft(), 2 * fit.errorS());
    }

    /**
     * A first-order response that was measured: NIST Statistical Reference Datasets, nonlinear regression, "Misra1a". All but the last
     * two points are fitted, and those two are forecast.
     */
    @ParameterizedTest
    @CsvSource({"75.47, 689.1", "81.78, 760.0"})
    void forecastsWhatWasMeasured(double goal, double when) {
        double[] y = {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40};
        double[] x = {77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1};
        for (int i = 0; i < x.length; i++) {
            samples.add(x[i], y[i]);
        }
        fit.fit(samples, 0, 0, goal + 2, goal, CurveFitTest::unthrottled);
        assertEquals(when - 593.1, fit.secondsLeft(), 2 * fit.errorS());
        assertEquals(when - 593.1, fit.secondsLeft(), 0.1 * (when - 593.1));
    }

    @Test
    void isUnknownWithoutEnoughSamples() {
        assertUnknown();
        for (int t = 0; t < CurveFit.LEAST_SAMPLES - 1; t++) {
            samples.add(t, 22 + t);
            fit.fit(samples, 0, 22, 62, 60, CurveFitTest::unthrottled);
            assertUnknown();
        }
    }

    @Test
    void isUnknownWhileNothingGetsHotter() {
        for (int t = 0; t < 20; t++) {
            samples.add(t, 30 - 0.1 * t);
        }
        fit.fit(samples, 0, 22, 62, 60, CurveFitTest::unthrottled);
        assertUnknown();
    }

    /** A heater whose final temperature lies below the goal. */
    @Test
    void doubtsThatItGetsThere() {
        heat(50, 100, 250, 2);
        fit.fit(samples, 0, 22, 62, 60, CurveFitTest::unthrottled);
        assertTrue(Double.isNaN(fit.secondsLeft()) || fit.never() > 0.5, () -> "" + fit.never());
    }

    @Test
    void forgetsTheFitBefore() {
        heat(132, 500, 100, 1);
        fit.fit(samples, 0, 22, 62, 60, CurveFitTest::unthrottled);
        assertAbove(0, fit.secondsLeft());
        samples.clear();
        fit.fit(samples, 0, 22, 62, 60, CurveFitTest::unthrottled);
        assertUnknown();
    }

    private void assertUnknown() {
        assertTrue(Double.isNaN(fit.secondsLeft()) && Double.isNaN(fit.errorS()), () -> "" + fit.secondsLeft());
    }
}
