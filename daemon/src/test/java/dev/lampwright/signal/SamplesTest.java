package dev.lampwright.signal;

import static dev.lampwright.testing.Bounds.assertAbove;
import static dev.lampwright.testing.Bounds.assertAtMost;
import static dev.lampwright.testing.Bounds.assertBelow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SamplesTest {
    private final Samples samples = new Samples();

    @Test
    void keepsValuesThatComeSeldomAsTheyAre() {
        samples.add(3, 20);
        samples.add(5, 21);
        assertEquals(2, samples.size());
        assertEquals(5, samples.time(1));
        assertEquals(21, samples.value(1));
    }

    @Test
    void takesTheMeanOfWhatComesAtOnce() {
        samples.add(3.0, 20);
        samples.add(3.1, 21);
        samples.add(3.2, 22);
        assertEquals(1, samples.size());
        assertEquals(3.1, samples.time(0), 1e-12);
        assertEquals(21, samples.value(0), 1e-12);
    }

    /** However fast and however long: the past is kept from its beginning, in order, and never in more than the available space. */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.1, 1, 7, 60})
    void keepsTheWholePast(double every) {
        SplittableRandom chance = new SplittableRandom(5);
        double now = 1000;
        for (int i = 0; i < 20_000; i++) {
            now += every * (0.1 + 1.8 * chance.nextDouble());
            samples.add(now, 2 * now);
            assertAtMost(Samples.MOST, samples.size());
        }
        double span = (now - 1000) / samples.size();
        assertTrue(samples.size() >= Samples.MOST / 3, () -> "only " + samples.size());
        assertBelow(1000 + 3 * span, samples.time(0));
        assertAbove(now - 3 * span, samples.time(samples.size() - 1));
        for (int i = 0; i < samples.size(); i++) {
            assertEquals(2 * samples.time(i), samples.value(i), 1e-6 * now);
            assertTrue(i == 0 || samples.time(i) > samples.time(i - 1));
        }
    }

    @Test
    void forgets() {
        samples.add(3, 20);
        samples.clear();
        assertEquals(0, samples.size());
        samples.add(1, 5);
        assertEquals(1, samples.time(0));
    }
}
