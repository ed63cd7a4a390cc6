package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GrainsTest {
    private static final int PIXELS = 200;

    private static float[] cover(Extent grains, double seconds) {
        return Places.covered(grains, Moments.after(seconds), PIXELS);
    }

    /** Binomial: of n pixels in n turns, the share that is lit is within four standard deviations. The mean of sin² is 1/2. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.05, 0.3, 1})
    void asManyAreLitAsAreWanted(double density) {
        Extent grains = new GrainsExtent(density, 2, 7).make();
        int turns = 500;
        int lit = 0;
        double light = 0;
        for (int turn = 0; turn < turns; turn++) {
            for (float value : cover(grains, 0.123 + 2.618 * turn)) {
                lit += value > 0 ? 1 : 0;
                light += value;
            }
        }
        double trials = PIXELS * (double) turns;
        double deviation = Math.sqrt(density * (1 - density) / trials);
        assertEquals(density, lit / trials, 4 * deviation + 1e-12);
        assertEquals(density / 2, light / trials, 4 * deviation + 0.01 * density);
    }

    @Test
    void theSameSeedIsTheSameOnEveryRun() {
        for (double seconds : new double[] {0, 0.5, 17.25, 86_400}) {
            assertArrayEquals(
                    cover(new GrainsExtent(0.3, 2, 7).make(), seconds),
                    cover(new GrainsExtent(0.3, 2, 7).make(), seconds),
                    0f);
        }
        assertFalse(Arrays.equals(
                cover(new GrainsExtent(0.3, 2, 7).make(), 5), cover(new GrainsExtent(0.3, 2, 8).make(), 5)));
    }

    /** A point appears and disappears as sin²(πt/g), whose slope is at most π/g. */
    @Test
    void pointsComeAndGoGently() {
        Extent grains = new GrainsExtent(1, 2, 7).make();
        float[] before = cover(grains, 0);
        double pause = 1.0 / 60;
        for (int frame = 1; frame < 600; frame++) {
            float[] now = cover(grains, frame * pause);
            for (int i = 0; i < PIXELS; i++) {
                assertEquals(before[i], now[i], Math.PI / 2 * pause + 1e-5);
            }
            before = now;
        }
    }

    /** The JDK's SplittableRandom is SplitMix64, according to its authors. */
    @Test
    void chanceIsThatOfTheJdk() {
        for (long seed = -3; seed < 100; seed++) {
            long once = new SplittableRandom(seed).nextLong();
            long twice = new SplittableRandom(once).nextLong();
            assertEquals((twice >>> 11) * 0x1.0p-53, Chance.share(seed, 1, 1));
        }
    }

    @Test
    void chanceIsEvenlySpread() {
        int[] classes = new int[10];
        for (int place = 0; place < 1000; place++) {
            for (int time = -50; time < 50; time++) {
                classes[(int) (10 * Chance.share(1, place, time))]++;
            }
        }
        double squares = 0;
        for (int count : classes) {
            squares += (count - 10_000.0) * (count - 10_000.0) / 10_000;
        }
        // χ² of 9 degrees of freedom is over 27.9 once in a thousand (tables; from memory)
        assertTrue(squares < 27.9, "χ² is " + squares);
    }
}
