package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** WCAG 2.2's note: a transition is the change between adjacent peaks and valleys. */
class SwingsTest {
    @Test
    void countsPeaksAndValleysOfAStepOrMore() {
        assertEquals(0, count(10, 0, 9, 0, 9));
        assertEquals(4, count(10, 0, 10, 0, 10, 0));
        assertEquals(1, count(10, 0, 3, 6, 9, 12, 15, 40));
        assertEquals(3, count(10, 50, 45, 40, 44, 41, 60, 55, 50));
        assertEquals(0, count(10));
    }

    /** Any numbers: the count equals the longest chain of opposing changes, found by trying all. */
    @Test
    void isTheGreatestNumberOfOpposingChanges() {
        SplittableRandom chance = new SplittableRandom(3);
        for (int trial = 0; trial < 5000; trial++) {
            long[] values = chance.longs(2 + chance.nextInt(30), 0, 30).toArray();
            assertEquals(longest(values, 10), count(10, values), "trial " + trial);
        }
    }

    /** If only marked numbers make a change count, the count is never lower than the longest chain of them. */
    @Test
    void changesWithMarksAreNeverMissed() {
        SplittableRandom chance = new SplittableRandom(4);
        for (int trial = 0; trial < 5000; trial++) {
            long[] values = chance.longs(2 + chance.nextInt(30), 0, 30).toArray();
            boolean[] marks = new boolean[values.length];
            Swings swings = new Swings(10);
            for (int i = 0; i < values.length; i++) {
                marks[i] = chance.nextInt(4) == 0;
                swings.add(values[i], marks[i]);
            }
            assertTrue(swings.count() >= longest(values, marks, 10), "trial " + trial);
            assertTrue(swings.count() <= longest(values, 10), "trial " + trial);
        }
    }

    @Test
    void withoutMarksNothingCounts() {
        Swings swings = new Swings(10);
        for (int i = 0; i < 20; i++) {
            swings.add(i % 2 * 50L, false);
        }
        assertEquals(0, swings.count());
    }

    private static int count(long step, long... values) {
        Swings swings = new Swings(step);
        for (long value : values) {
            swings.add(value, true);
        }
        return swings.count();
    }

    private static int longest(long[] values, long step) {
        boolean[] marks = new boolean[values.length];
        Arrays.fill(marks, true);
        return longest(values, marks, step);
    }

    /** Each change goes from a peak to a valley with nothing beyond them in between, or vice versa. */
    private static int longest(long[] values, boolean[] marks, long step) {
        int[] up = new int[values.length];
        int[] down = new int[values.length];
        for (int to = 1; to < values.length; to++) {
            long least = values[to];
            long most = values[to];
            up[to] = up[to - 1];
            down[to] = down[to - 1];
            for (int from = to - 1; from >= 0; from--) {
                least = Math.min(least, values[from]);
                most = Math.max(most, values[from]);
                boolean counts = (marks[from] || marks[to]) && most - least >= step;
                if (counts && values[from] == least && values[to] == most) {
                    up[to] = Math.max(up[to], down[from] + 1);
                } else if (counts && values[from] == most && values[to] == least) {
                    down[to] = Math.max(down[to], up[from] + 1);
                }
            }
        }
        return Math.max(up[values.length - 1], down[values.length - 1]);
    }
}
