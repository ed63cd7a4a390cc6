package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.protocol.Frame;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class FrameSlotTest {
    private static final int FRAMES = 500_000;

    private final FrameSlot slot = new FrameSlot(64, 1);

    private void publish(int value) {
        Frame frame = slot.back();
        Arrays.fill(frame.strip(), (byte) value);
        frame.duties()[0] = value;
        slot.publish();
    }

    @Test
    void theNewestWinsAndTheRestAreCounted() {
        assertFalse(slot.fresh());
        publish(1);
        publish(2);
        publish(3);
        assertTrue(slot.fresh());
        assertEquals(3, slot.take().duties()[0]);
        assertFalse(slot.fresh());
        assertEquals(2, slot.skipped());
    }

    @Test
    void withoutANewerOneTheSameFrameIsTakenAgain() {
        publish(1);
        Frame taken = slot.take();
        assertSame(taken, slot.take());
    }

    @Test
    void aFrameThatWasTakenStaysAsItIs() {
        publish(1);
        Frame taken = slot.take();
        publish(2);
        publish(3);
        assertEquals(1, taken.duties()[0]);
    }

    @Test
    @Timeout(60)
    void twoThreadsNeverSeeATornFrameNorAnOlderOneAfterANewer() throws InterruptedException {
        Thread filler = new Thread(() -> {
            for (int value = 1; value <= FRAMES; value++) {
                publish(value);
            }
        });
        filler.start();
        int newest = 0;
        long taken = 0;
        while (newest < FRAMES) {
            if (slot.fresh()) {
                Frame frame = slot.take();
                int value = frame.duties()[0];
                assertTrue(value > newest, "older than " + newest + ": " + value);
                requireWhole(frame, (byte) value);
                newest = value;
                taken++;
            }
        }
        filler.join(60_000);
        assertEquals(FRAMES, taken + slot.skipped());
    }

    private static void requireWhole(Frame frame, byte value) {
        for (byte channel : frame.strip()) {
            assertEquals(value, channel);
        }
    }

    @Test
    void allocatesNothing() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        turn(20_000);
        long before = threads.getCurrentThreadAllocatedBytes();
        long unused = threads.getCurrentThreadAllocatedBytes() - before;
        before = threads.getCurrentThreadAllocatedBytes();
        turn(20_000);
        assertEquals(unused, threads.getCurrentThreadAllocatedBytes() - before);
    }

    private void turn(int times) {
        for (int i = 0; i < times; i++) {
            publish(i);
            slot.take();
        }
    }
}
