package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.config.Config;
import dev.lampwright.protocol.Frame;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FrameTapTest {
    private static final int WARM = 20_000;
    private static final int COUNTED = 10_000;

    private final Config config = Configs.of(300, "GRB", "");
    private final FrameTap tap = new FrameTap(config);
    private final Frame frame = new Frame(config.setup().stripBytes(), 0);

    @Test
    void aPlaceThatIsClosedIsLeftNothing() {
        FrameTap.Place place = tap.open();
        place.close();
        tap.leave(frame);
        assertFalse(place.fresh());
        assertEquals(0, tap.looking());
    }

    @Test
    void aFrameIsAwaitedUntilEachPlaceHasOne() {
        assertFalse(tap.isAwaited());
        FrameTap.Place first = tap.open();
        assertTrue(tap.isAwaited());
        tap.leave(frame);
        assertFalse(tap.isAwaited());
        FrameTap.Place second = tap.open();
        assertTrue(tap.isAwaited(), "the second has none yet");
        second.close();
        assertFalse(tap.isAwaited());
        assertTrue(first.fresh());
    }

    @Test
    void eachWhoLooksTakesFramesForItselfAlone() {
        FrameTap.Place first = tap.open();
        FrameTap.Place second = tap.open();
        frame.strip()[0] = 7;
        tap.leave(frame);
        assertEquals(7, first.take().strip()[0]);
        assertTrue(second.fresh());
        assertEquals(7, second.take().strip()[0]);
    }

    @Test
    void anOpenTapHasTheNewestFrameByteForByte() {
        Random random = new Random(4);
        FrameTap.Place place = tap.open();
        for (int i = 0; i < 5; i++) {
            random.nextBytes(frame.strip());
            tap.leave(frame);
        }
        assertTrue(place.fresh());
        assertArrayEquals(frame.strip(), place.take().strip());
        assertFalse(place.fresh());
    }

    @Test
    void whatWasTakenStaysAsItIs() {
        FrameTap.Place place = tap.open();
        frame.strip()[0] = 1;
        tap.leave(frame);
        Frame taken = place.take();
        for (int i = 2; i < 9; i++) {
            frame.strip()[0] = (byte) i;
            tap.leave(frame);
        }
        assertEquals(1, taken.strip()[0]);
        assertEquals(8, place.take().strip()[0]);
    }

    @Test
    void leavingAllocatesNothing() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        tap.open();
        tap.open();
        leave(WARM);
        long before = threads.getCurrentThreadAllocatedBytes();
        leave(COUNTED);
        long bytes = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(bytes < COUNTED, bytes + " bytes for " + COUNTED + " frames");
    }

    private void leave(int count) {
        for (int i = 0; i < count; i++) {
            frame.strip()[i % frame.strip().length]++;
            tap.leave(frame);
        }
    }
}
