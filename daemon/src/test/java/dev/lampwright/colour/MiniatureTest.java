package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;

class MiniatureTest {
    @Test
    void aShortStripKeepsEachOfItsPixels() {
        Miniature small = new Miniature("GRB", 2);
        small.take(new byte[] {0, (byte) 255, 0, 0, 0, (byte) 255});
        assertArrayEquals(new byte[] {(byte) 255, 0, 0, 0, 0, (byte) 255}, small.rgb());
    }

    /** Half of full light is encoded as 188 of 255. Source: IEC 61966-2-1, 1.055 × 0.5^(1/2.4) − 0.055 = 0.7354. */
    @Test
    void lightIsAddedUpInLinearLight() {
        Miniature small = new Miniature("RGB", 64);
        byte[] strip = new byte[64 * 3];
        strip[0] = (byte) 255;
        small.take(strip);
        assertEquals(3 * Miniature.MOST, small.rgb().length);
        assertEquals(188, small.rgb()[0] & 0xFF);
        assertEquals(0, small.rgb()[3]);
    }

    @Test
    void everyPixelOfALongStripCountsOnce() {
        for (int pixels : new int[] {33, 300, 1000}) {
            for (int lit : new int[] {0, pixels / 2, pixels - 1}) {
                byte[] strip = new byte[pixels * 4];
                strip[4 * lit + 3] = (byte) 255;
                Miniature small = new Miniature("RGBW", pixels);
                small.take(strip);
                int seen = 0;
                for (int i = 0; i < Miniature.MOST; i++) {
                    seen += small.rgb()[3 * i] == 0 ? 0 : 1;
                }
                assertEquals(1, seen, pixels + " pixels, " + lit + " lit");
            }
        }
    }

    @Test
    void whatIsTheSameAsBeforeIsNotNew() {
        Miniature small = new Miniature("RGB", 3);
        byte[] strip = new byte[9];
        strip[8] = 1;
        assertTrue(small.take(strip));
        assertFalse(small.take(strip));
    }

    @Test
    void nothingIsAllocatedForAFrame() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        Miniature small = new Miniature("GRB", 300);
        byte[] strip = new byte[900];
        for (int i = 0; i < 2000; i++) {
            strip[i % 900]++;
            small.take(strip);
        }
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 2000; i++) {
            strip[i % 900]++;
            small.take(strip);
        }
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertEquals(0, allocated / 2000, allocated + " bytes in 2000 frames");
    }
}
