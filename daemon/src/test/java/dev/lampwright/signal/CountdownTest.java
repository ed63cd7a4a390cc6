package dev.lampwright.signal;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

final class CountdownTest {
    private static final long SECOND = 1_000_000_000L;

    private final StopClock clock = new StopClock();
    private final Countdown left = new Countdown(clock);

    @Test
    void isUnknownWithoutAnEnd() {
        clock.run(true, 0);
        assertTrue(Double.isNaN(left.at(SECOND)));
    }

    @Test
    void runsBetweenMessagesAndEndsAtZero() {
        clock.run(true, 0);
        left.to(30, 5 * SECOND);
        assertEquals(25, left.at(5 * SECOND), 1e-9);
        assertEquals(24.5, left.at(5 * SECOND + SECOND / 2), 1e-9);
        assertEquals(0, left.at(30 * SECOND), 1e-9);
        assertEquals(0, left.at(100 * SECOND), 0);
    }

    @Test
    void standsStillWithItsClock() {
        clock.run(true, 0);
        left.to(30, 0);
        clock.run(false, 10 * SECOND);
        assertEquals(20, left.at(15 * SECOND), 1e-9);
        assertEquals(20, left.at(500 * SECOND), 1e-9);
        clock.run(true, 500 * SECOND);
        assertEquals(15, left.at(505 * SECOND), 1e-9);
    }

    /** Whatever ends are reported: never below 0, and from frame to frame no step beyond what the new end requires. */
    @Test
    void isNeverNegativeAndNeverSteps() {
        SplittableRandom chance = new SplittableRandom(4);
        clock.run(true, 0);
        left.to(100, 0);
        double last = left.at(0);
        for (int frame = 1; frame < 60_000; frame++) {
            long now = frame * SECOND / 60;
            if (frame % 60 == 0) {
                left.to(clock.at(now) + chance.nextDouble(-5, 60), now);
            }
            double value = left.at(now);
            assertAtLeast(0, value);
            assertTrue(Math.abs(value - last) < 65 / 60.0 * 2, () -> "a step at " + now);
            last = value;
        }
    }
}
