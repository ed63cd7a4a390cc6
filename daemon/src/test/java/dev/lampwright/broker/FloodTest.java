package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class FloodTest {
    private static final long SECOND = 1_000_000_000L;

    private final Flood flood = new Flood();

    private long tooMany(int messages, long startNanos, long perSecond) {
        return IntStream.range(0, messages)
                .filter(i -> flood.add(startNanos + i * SECOND / perSecond))
                .count();
    }

    @Test
    void whatAPrinterMaySayForEverIsNoFlood() {
        assertEquals(0, tooMany(100_000, -5 * SECOND, Flood.PER_SECOND));
    }

    /** As a broker sends that has kept many topics. */
    @Test
    void aBurstIsNone() {
        assertEquals(0, tooMany(4000, 0, 1_000_000));
        assertEquals(0, tooMany(4000, 10 * SECOND, 1_000_000));
    }

    /** 1000 a second are 500 too many in each second, so ten seconds of it are one flood. */
    @Test
    void moreThanThatForLongIsOne() {
        assertEquals(0, tooMany(9_900, 0, 1000));
        long over = tooMany(1000, 10 * SECOND, 1000);
        assertTrue(Math.abs(over - 801) <= 2, () -> "but for rounding 801 are too many, not " + over);
    }
}
