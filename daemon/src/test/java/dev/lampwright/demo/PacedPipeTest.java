package dev.lampwright.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PacedPipeTest {
    private final byte[] source = new byte[1 << 13];
    private final PacedPipe pipe = new PacedPipe(1_000_000);
    private int taken;
    private long lastArrival;

    private void take(int count) {
        for (int i = 0; i < count; i++) {
            assertTrue(pipe.firstArrival() > lastArrival, "one arrives after the other");
            lastArrival = pipe.firstArrival();
            assertEquals(source[taken++], pipe.take());
        }
    }

    /** What is in transit goes around the end of the arrays when they become too small. */
    @Test
    void growsWithoutLosingOrSwappingAnything() {
        for (int i = 0; i < source.length; i++) {
            source[i] = (byte) (i * 31 / 8);
        }
        int room = pipe.room();
        pipe.put(source, 0, 200, 0);
        take(150);
        pipe.put(source, 200, 150, 0);
        pipe.put(source, 350, 5000, 0);
        assertEquals(room - 5200, pipe.room());
        take(5200);
        assertTrue(pipe.isEmpty());
    }
}
