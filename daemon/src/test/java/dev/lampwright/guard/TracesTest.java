package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TracesTest {
    private static final long STEP = 10;

    /** Three independent regions are counted like three separate counters. */
    @Test
    void eachRegionIsCountedByItself() {
        SplittableRandom chance = new SplittableRandom(5);
        Traces traces = new Traces(3, STEP, 64);
        Swings[] swings = {new Swings(STEP), new Swings(STEP), new Swings(STEP)};
        List<List<Integer>> turns = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (int frame = 0; frame < 400; frame++) {
            for (int region = 0; region < 3; region++) {
                long value = chance.nextInt(18);
                boolean mark = chance.nextInt(3) == 0;
                int before = swings[region].count();
                boolean moved = traces.wouldMove(region, value, mark);
                traces.keep(region, value, mark, frame);
                swings[region].add(value, mark);
                if (swings[region].count() > before) {
                    assertTrue(moved, "what counts would move");
                    turns.get(region).add(frame);
                }
            }
        }
        for (int region = 0; region < 3; region++) {
            int lastFew = 30;
            List<Integer> all = turns.get(region);
            assertTrue(all.size() > lastFew, all.size() + " transitions");
            int from = all.get(all.size() - 1 - lastFew);
            assertEquals(lastFew, traces.transitionsAfter(region, from));
            assertEquals(lastFew + 1, traces.transitionsAfter(region, from - 1));
        }
    }

    @Test
    void noMoreAreRememberedThanWasAskedFor() {
        Traces traces = new Traces(1, STEP, 8);
        for (int frame = 0; frame < 20; frame++) {
            traces.keep(0, STEP * (frame % 2), true, frame);
        }
        assertEquals(8, traces.transitionsAfter(0, -1));
        assertEquals(3, traces.transitionsAfter(0, 16));
        assertEquals(0, traces.transitionsAfter(0, 19));
    }

    @Test
    void aRegionThatIsForgottenBeginsAgain() {
        Traces traces = new Traces(2, STEP, 8);
        for (int frame = 0; frame < 5; frame++) {
            traces.keep(0, STEP * (frame % 2), true, frame);
            traces.keep(1, STEP * (frame % 2), true, frame);
        }
        traces.restart(0);
        assertEquals(0, traces.transitionsAfter(0, -1));
        assertEquals(4, traces.transitionsAfter(1, -1));
        assertFalse(traces.wouldMove(0, STEP, true));
        traces.keep(0, 0, true, 5);
        assertTrue(traces.wouldMove(0, STEP, true));
        assertFalse(traces.wouldMove(0, STEP - 1, true));
    }
}
