package dev.lampwright.signal;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class GlideTest {
    private static final long SECOND = 1_000_000_000L;
    private static final double EXACT = 1e-12;

    private final Glide glide = new Glide();

    @Test
    void isUnknownBeforeTheFirstValue() {
        assertTrue(Double.isNaN(glide.at(5 * SECOND)));
    }

    @Test
    void takesTheFirstValueAtOnce() {
        glide.to(0.4, SECOND);
        assertEquals(0.4, glide.at(SECOND), EXACT);
    }

    @Test
    void arrivesWhenTheNextMessageIsDue() {
        glide.to(0.2, SECOND);
        glide.to(0.4, 2 * SECOND);
        assertEquals(0.2, glide.at(2 * SECOND), EXACT);
        assertEquals(0.3, glide.at(2 * SECOND + SECOND / 2), EXACT);
        assertEquals(0.4, glide.at(3 * SECOND), EXACT);
        assertEquals(0.4, glide.at(9 * SECOND), EXACT);
    }

    @Test
    void isNotDisturbedByTheSameValueAgain() {
        glide.to(0.2, SECOND);
        glide.to(0.4, 2 * SECOND);
        glide.to(0.4, 2 * SECOND + 1_000_000);
        assertEquals(0.3, glide.at(2 * SECOND + SECOND / 2), EXACT);
    }

    /** On its way it moves; before a value, once it has arrived, and with nowhere to go it stands still. */
    @Test
    void saysWhenItStandsStill() {
        assertEquals(Signals.FOREVER, glide.stillFor(SECOND));
        glide.to(0.2, SECOND);
        assertEquals(Signals.FOREVER, glide.stillFor(SECOND));
        glide.to(0.4, 2 * SECOND);
        assertEquals(0, glide.stillFor(2 * SECOND));
        assertEquals(0, glide.stillFor(3 * SECOND - 1));
        assertEquals(Signals.FOREVER, glide.stillFor(3 * SECOND));
        glide.to(0.4, 4 * SECOND);
        assertEquals(Signals.FOREVER, glide.stillFor(4 * SECOND));
        glide.to(Double.NaN, 5 * SECOND);
        assertEquals(Signals.FOREVER, glide.stillFor(5 * SECOND));
    }

    @Test
    void becomesUnknownAndKnownAgainAtOnce() {
        glide.to(0.2, SECOND);
        glide.to(Double.NaN, 2 * SECOND);
        assertTrue(Double.isNaN(glide.at(2 * SECOND)));
        glide.to(0.9, 3 * SECOND);
        assertEquals(0.9, glide.at(3 * SECOND), EXACT);
    }

    /** Whatever comes at any time: always between the values heard, and no step between two frames beyond what the movement requires. */
    @Test
    void neverOvershootsAndNeverSteps() {
        SplittableRandom chance = new SplittableRandom(3);
        long now = SECOND;
        glide.to(0.5, now);
        double last = glide.at(now);
        for (int message = 0; message < 2000; message++) {
            now += SECOND / 4 + chance.nextLong(SECOND);
            double target = chance.nextDouble();
            double here = glide.at(now);
            glide.to(target, now);
            assertEquals(here, glide.at(now), EXACT);
            double slowest = Math.abs(target - here) / (SECOND / 4.0);
            for (long t = now; t < now + SECOND / 4; t += SECOND / 60) {
                double value = glide.at(t);
                assertAtLeast(Math.min(here, target) - EXACT, value);
                assertAtMost(Math.max(here, target) + EXACT, value);
                assertAtMost(slowest * SECOND / 60 + Math.abs(here - last) + EXACT, Math.abs(value - last));
                last = value;
            }
            last = glide.at(now + SECOND / 4);
        }
    }

    /** A message that is later than expected finds it at the previous value: it has arrived, waits, and is still known. */
    @Test
    void aLateMessageFindsItArrived() {
        glide.to(0.2, SECOND);
        glide.to(0.4, 2 * SECOND);
        assertEquals(0.4, glide.at(100 * SECOND), 0);
        glide.to(0.8, 100 * SECOND);
        assertEquals(0.4, glide.at(100 * SECOND), 0);
        assertEquals(0.8, glide.at(102 * SECOND), 0);
    }

    /**
     * However messages come, seldom, at once, late, or twice at the same time: from a message to the next it goes from where it was
     * straight to what the message says, never beyond, never back, and has arrived by the time that has passed between the last two,
     * or two seconds.
     */
    @Test
    void goesStraightAndIsNeverLaterThanOneMessage() {
        SplittableRandom chance = new SplittableRandom(17);
        long now = SECOND;
        long before = now;
        glide.to(chance.nextDouble(), now);
        for (int message = 0; message < 5000; message++) {
            before = now;
            now += chance.nextInt(5) == 0 ? 0 : Math.round(SECOND * Math.pow(10, chance.nextDouble(-3, 1.5)));
            double target = chance.nextDouble(-1e6, 1e6);
            double last = glide.at(now);
            glide.to(target, now);
            assertEquals(last, glide.at(now), 1e-9);
            double way = Math.signum(target - last);
            for (int step = 0; step <= 20; step++) {
                double value = glide.at(now + step * (SECOND / 10));
                assertTrue((value - last) * way >= 0, "it turns back");
                assertTrue((target - value) * way >= 0, "it overshoots");
                last = value;
            }
            long due = Math.max(SECOND / 20, Math.min(2 * SECOND, now - before));
            assertEquals(target, glide.at(now + due), 0);
        }
    }

    /** Time can stand still or, by rounding, seem to go back a little; its value stays valid. */
    @Test
    void isSoundBeforeItsBeginning() {
        glide.to(0.2, SECOND);
        glide.to(0.4, 2 * SECOND);
        assertEquals(0.2, glide.at(SECOND), EXACT);
    }
}
