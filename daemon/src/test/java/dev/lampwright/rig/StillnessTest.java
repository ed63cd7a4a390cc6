package dev.lampwright.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.rig.Stillness.Verdict;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** When a rig counts as standing still, looked at once a second. */
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
        Verdict last = Verdict.GOES_ON;
        for (int i = 0; i < looks; i++) {
            frames += 60;
            steps += 2;
            last = look();
        }
        return last;
    }

    /** How many looks it takes until it is built anew, which it then is. */
    private int looksUntilBuilt() {
        int looks = 1;
        while (look() != Verdict.BUILD_ANEW) {
            looks++;
        }
        stillness.built();
        return looks;
    }

    @Test
    void goesOnWhileBothCountsMove() {
        assertEquals(Verdict.GOES_ON, goOn(1000));
    }

    @Test
    void standsStillWhenEitherCountHasStoodStillForTenSeconds() {
        goOn(3);
        for (int i = 1; i < 10; i++) {
            frames += 60;
            assertEquals(Verdict.GOES_ON, look(), "after " + i + " s");
        }
        frames += 60;
        assertEquals(Verdict.BUILD_ANEW, look());
    }

    @Test
    void aCureThatDoesNotHelpIsTriedAfterTwiceTheTimeUpToTenMinutes() {
        goOn(1);
        assertEquals(10, looksUntilBuilt());
        assertEquals(20, looksUntilBuilt());
        assertEquals(40, looksUntilBuilt());
        for (int i = 0; i < 4; i++) {
            looksUntilBuilt();
        }
        assertEquals(600, looksUntilBuilt());
    }

    @Test
    void aCureThatHelpedForAMinuteIsTriedAtOnceTheNextTime() {
        goOn(1);
        looksUntilBuilt();
        goOn(60);
        assertEquals(10, looksUntilBuilt());
        goOn(30);
        assertEquals(20, looksUntilBuilt());
    }

    @Test
    void aProcessThatWasStoppedItselfFindsNothingStill() {
        goOn(1);
        seconds += 3600;
        assertEquals(Verdict.GOES_ON, look());
    }
}
