package dev.lampwright.guard;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.SupplyDraw;
import org.junit.jupiter.api.Test;

/** Our own rule: down in the same frame, held for ten seconds, up again over the rise. */
class RecoveryTest {
    private static final int RATE = 60;
    private static final int HOLD_S = 10;
    private static final long HALF = SupplyDraw.WHOLE / 2;

    @Test
    void isDownAtOnceAndUpAgainAfterTheHoldOverTheRise() {
        Recovery recovery = new Recovery(RATE, 2);
        assertEquals(HALF, recovery.next(HALF));
        for (int frame = 1; frame < HOLD_S * RATE; frame++) {
            assertEquals(HALF, recovery.next(SupplyDraw.WHOLE), "frame " + frame);
        }
        long factor = HALF;
        int frames = 0;
        while (factor < SupplyDraw.WHOLE) {
            long next = recovery.next(SupplyDraw.WHOLE);
            assertTrue(next >= factor && next - factor <= SupplyDraw.WHOLE / (2 * RATE), factor + " to " + next);
            factor = next;
            frames++;
        }
        assertTrue(
                frames >= RATE && frames <= 2 * RATE + 2, "half of two seconds, and up to one of holding: " + frames);
    }

    /** A look that crosses the limit back and forth with any period up to the hold is dimmed evenly: the factor never moves. */
    @Test
    void doesNotPump() {
        for (int period = 1; period <= HOLD_S * RATE; period += 7) {
            Recovery recovery = new Recovery(RATE, 0.1);
            recovery.next(HALF);
            for (int frame = 1; frame < 40 * RATE; frame++) {
                long needed = frame % period == 0 ? HALF : SupplyDraw.WHOLE;
                assertEquals(HALF, recovery.next(needed), "period " + period + ", frame " + frame);
            }
        }
    }

    /** A deep dip long ago does not make the factor overshoot later, shallower ones. */
    @Test
    void risesOnlyToWhatIsNeededSince() {
        Recovery recovery = new Recovery(RATE, 0.5);
        recovery.next(HALF / 2);
        long factor = 0;
        for (int frame = 1; frame < 30 * RATE; frame++) {
            factor = recovery.next(frame % RATE == 0 ? HALF : SupplyDraw.WHOLE);
            assertAtMost(HALF, factor);
        }
        assertEquals(HALF, factor);
    }
}
