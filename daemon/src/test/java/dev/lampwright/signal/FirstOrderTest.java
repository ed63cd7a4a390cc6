package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FirstOrderTest {
    /** Step response 1 − e^(−t/τ): 63.2 % after one time constant, 86.5 % after two, 95.0 % after three (any textbook of control). */
    @ParameterizedTest
    @CsvSource({"0.6321205588, 1", "0.8646647168, 2", "0.9502129316, 3"})
    void reachesTheTextbooksSharesAfterWholeTimeConstants(double share, double constants) {
        double tau = 80;
        assertEquals(constants * tau, FirstOrder.timeToGoal(-share, (1 - share) / tau, 1 / tau), 1e-7 * tau);
    }

    /**
     * IEC 60255-149, hot curve of a thermal overload relay: t = τ·ln((I² − Ip²) ÷ (I² − k²·IB²)), where heat goes with the square of
     * the current. With I = 2, Ip = 0.9, k·IB = 1 and τ = 10 min that is 10·ln(3.19 ÷ 3) = 0.614 min.
     */
    @Test
    void agreesWithTheHotCurveOfThermalRelays() {
        double tau = 10;
        double hot = 0.9 * 0.9;
        double limit = 1;
        double heating = 2 * 2;
        double expected = tau * Math.log((heating - hot) / (heating - limit));
        assertEquals(0.614, expected, 5e-4);
        assertEquals(expected, FirstOrder.timeToGoal(hot - limit, (heating - limit) / tau, 1 / tau), 1e-12);
    }

    @Test
    void withoutARateItIsAStraightLine() {
        assertEquals(20, FirstOrder.timeToGoal(-10, 0.5, 0), 1e-12);
        assertEquals(FirstOrder.timeToGoal(-10, 0.5, 0.99e-7), FirstOrder.timeToGoal(-10, 0.5, 1.01e-7), 1e-5);
    }

    @ParameterizedTest
    @CsvSource({"-10, 0.5, 0", "-40, 0.2, 0.002", "-1, 0.01, 0.5", "-190, 1.5, 0.01"})
    void derivativesAreThoseOfTheTime(double u, double slope, double rate) {
        double step = 1e-4;
        double time = FirstOrder.timeToGoal(u, slope, rate);
        assertEquals(
                (FirstOrder.timeToGoal(u * (1 + step), slope, rate) - time) / (u * step),
                FirstOrder.byU(u, slope, rate),
                1e-3 / slope);
        assertEquals(
                (FirstOrder.timeToGoal(u, slope * (1 + step), rate) - time) / (slope * step),
                FirstOrder.bySlope(u, slope, rate),
                -1e-3 * u / slope / slope);
        double rateStep = 1e-4 * Math.max(rate, 1e-2);
        assertEquals(
                (FirstOrder.timeToGoal(u, slope, rate + rateStep) - time) / rateStep,
                FirstOrder.byRate(u, slope, rate),
                2e-3 * u * u / slope / slope);
    }
}
