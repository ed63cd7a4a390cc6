package dev.lampwright.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.rig.Stillness.Verdict;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** When a rig counts as stalled, with a check every second. */
class StillnessTest {
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);

    private final Stillness stillness = new Stillness(0, 2);
    private long seconds;
    private long frames;
    private long steps;

    private Verdict look() {
        seconds++;
        return stillness.look(seconds * SECOND, frames, steps);
    }

    private Verdict goOn(int looks) {
        Verdict last = Verdict.RUNNING;
        for (int i = 0; i < looks; i++) {
            frames += 60;
            steps += 2;
            last = look();
        }
        return last;
    }

    /** How many checks it takes until it must be restarted, which it then is. */
    private int looksUntilRestart() {
        int looks = 1;
        while (look() != Verdict.RESTART) {
            looks++;
        }
        stillness.restarted();
        return looks;
    }

    @Test
    void goesOnWhileBothCountsMove() {
        assertEquals(Verdict.RUNNING, goOn(1000));
    }

    @Test
    void standsStillWhenEitherCountHasStoodStillForTenSeconds() {
        goOn(3);
        for (int i = 1; i < 10; i++) {
            frames += 60;
            assertEquals(Verdict.RUNNING, look(), "after " + i + " s");
        }
        frames += 60;
        assertEquals(Verdict.RESTART, look());
    }

    @Test
    void aCureThatDoesNotHelpIsTriedAfterTwiceTheTimeUpToTenMinutes() {
        goOn(1);
        assertEquals(10, looksUntilRestart());
        assertEquals(20, looksUntilRestart());
        assertEquals(40, looksUntilRestart());
        for (int i = 0; i < 4; i++) {
            looksUntilRestart();
        }
        assertEquals(600, looksUntilRestart());
    }

    @Test
    void aCureThatHelpedForAMinuteIsTriedAtOnceTheNextTime() {
        goOn(1);
        looksUntilRestart();
        goOn(60);
        assertEquals(10, looksUntilRestart());
        goOn(30);
        assertEquals(20, looksUntilRestart());
    }

    @Test
    void aProcessThatWasStoppedItselfFindsNothingStill() {
        goOn(1);
        seconds += 3600;
        assertEquals(Verdict.RUNNING, look());
    }
}
