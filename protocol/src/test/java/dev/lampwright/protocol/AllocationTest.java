package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;

class AllocationTest {
    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();

    private final Frame frame = new Frame(900, 2);
    private final FrameParts parts = new FrameParts(900, 2, 512);
    private final MessageReader reader = new MessageReader(512);
    private final CountingHandler handler = new CountingHandler();

    /** The JVM counts the bytes; the same thread does nothing else meanwhile. */
    @Test
    void encodingAndDecodingAFrameAllocatesNothing() {
        roundTrips(2000);
        long before = THREADS.getCurrentThreadAllocatedBytes();
        roundTrips(2000);
        long allocated = THREADS.getCurrentThreadAllocatedBytes() - before;
        assertEquals(0, allocated / 2000, allocated + " bytes in 2000 frames");
        assertEquals(8000, handler.messages);
    }

    private void roundTrips(int count) {
        for (int i = 0; i < count; i++) {
            frame.strip()[i % 900] = (byte) i;
            parts.begin(frame);
            while (!parts.done()) {
                int length = parts.next(i);
                reader.accept(parts.wire(), 0, length, handler);
            }
        }
    }

    private static final class CountingHandler implements MessageReader.Handler {
        private int messages;

        @Override
        public void message(Message message) {
            messages++;
        }

        @Override
        public void broken(int bytes) {
            throw new AssertionError("broken");
        }
    }
}
