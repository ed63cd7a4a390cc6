package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LatenessTest {
    @Test
    void saysNothingOfNothing() {
        assertEquals(0, new Lateness().microsAt(0.5));
    }

    /** Against the sorted values themselves, over nine decades. */
    @Test
    void isWithinThreePercentOfTheTrueShare() {
        SplittableRandom chance = new SplittableRandom(5);
        long[] values = new long[20_000];
        Lateness lateness = new Lateness();
        for (int i = 0; i < values.length; i++) {
            values[i] = (long) Math.pow(10, 9 * chance.nextDouble());
            lateness.add(values[i]);
        }
        Arrays.sort(values);
        for (double share : new double[] {0.001, 0.1, 0.5, 0.9, 0.99, 0.999, 1}) {
            double exact = values[(int) Math.ceil(share * values.length) - 1] / 1000.0;
            assertEquals(exact, lateness.microsAt(share), exact * 0.033 + 0.001);
        }
        assertEquals(20_000, lateness.total());
        assertEquals(Arrays.stream(values).sum(), lateness.sumNanos());
        for (long nanos : new long[] {1, 10, 31, 100, 1_000, 500_000, 1_000_000_000}) {
            long told = lateness.upTo(nanos);
            assertTrue(told <= countUpTo(values, nanos), () -> told + " up to " + nanos);
            assertTrue(told >= countUpTo(values, (long) (nanos / 1.033) - 1), () -> told + " up to " + nanos);
        }
    }

    private static long countUpTo(long[] values, long nanos) {
        return Arrays.stream(values).filter(value -> value <= nanos).count();
    }

    @Test
    void takesWhatIsTooEarlyAsInTimeAndWhatIsVeryLateAsVeryLate() {
        Lateness lateness = new Lateness();
        lateness.add(-5);
        assertEquals(0, lateness.microsAt(1));
        lateness.add(Long.MAX_VALUE);
        assertEquals(2, lateness.total());
    }
}
