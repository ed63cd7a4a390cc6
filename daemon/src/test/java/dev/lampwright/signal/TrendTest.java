package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class TrendTest {
    private final Trend trend = new Trend();

    /** A line's slope is found exactly, however its points are spaced: least squares leave nothing of it. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.5, 2, 10})
    void isALinesSlope(double every) {
        SplittableRandom chance = new SplittableRandom(1);
        double now = 1e5;
        for (int i = 0; i < 500; i++) {
            now += every * (0.1 + chance.nextDouble());
            trend.add(20 - 1.25 * now, now);
        }
        assertEquals(-1.25, trend.perSecond(), 1e-6);
    }

    @Test
    void isUnknownUntilThereIsEnough() {
        trend.add(20, 0);
        trend.add(21, 1);
        assertTrue(Double.isNaN(trend.perSecond()));
        trend.add(22, 2);
        assertEquals(1, trend.perSecond(), 1e-9);
        trend.forget();
        assertTrue(Double.isNaN(trend.perSecond()));
    }

    @Test
    void readingsAtTheSameMomentSayNothing() {
        for (int i = 0; i < 100; i++) {
            trend.add(20 + i, 5);
        }
        assertTrue(Double.isNaN(trend.perSecond()));
    }

    /** Whole degrees reported every second, for a bed that gains one every five seconds. */
    @Test
    void makesLittleOfRounding() {
        for (int t = 0; t < 200; t++) {
            trend.add(Math.rint(22 + 0.2 * t), t);
            assertTrue(t < 30 || Math.abs(trend.perSecond() - 0.2) < 0.06, () -> "" + trend.perSecond());
        }
    }

    @Test
    void followsAChange() {
        for (int t = 0; t < 100; t++) {
            trend.add(t < 50 ? t : 50, t);
        }
        assertEquals(0, trend.perSecond(), 0.02);
    }
}
