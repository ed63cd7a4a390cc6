package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

final class ArrivalTest {
    private final Arrival arrival = new Arrival();

    @Test
    void isUnknownUntilThereIsAnEstimate() {
        assertFalse(arrival.isKnown());
        assertTrue(Double.isNaN(arrival.take(Double.NaN, 0)));
        assertEquals(100, arrival.take(100, 1));
        assertTrue(arrival.isKnown());
    }

    @Test
    void comesToAnEstimateThatStays() {
        arrival.take(200, 0);
        double end = 200;
        for (int t = 1; t <= 60; t++) {
            double next = arrival.take(150, t);
            assertTrue(next <= end && next >= 150, "it neither turns back nor overshoots");
            end = next;
        }
        assertEquals(150, end, 1);
    }

    /** Estimates that scatter by a tenth of the time left move the reported time by far less from message to message. */
    @Test
    void doesNotJumpAbout() {
        SplittableRandom chance = new SplittableRandom(2);
        double end = arrival.take(600, 0);
        for (int t = 1; t < 550; t++) {
            double left = 600 - t;
            double next = arrival.take(600 + 0.1 * left * chance.nextGaussian(), t);
            assertTrue(Math.abs(next - end) < Math.max(1.5, 0.03 * left), "from " + end + " to " + next + " at " + t);
            end = next;
        }
        assertEquals(600, end, 30);
    }

    @Test
    void goesOnForAWhileWithoutEstimates() {
        arrival.take(100, 0);
        assertEquals(100, arrival.take(Double.NaN, 10));
        assertTrue(Double.isNaN(arrival.take(Double.NaN, 40)));
        assertFalse(arrival.isKnown());
        assertEquals(90, arrival.take(90, 41));
    }

    @Test
    void isNeverInThePast() {
        arrival.take(10, 0);
        assertEquals(15, arrival.take(10, 15));
    }
}
