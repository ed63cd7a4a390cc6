package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.testing.Await;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What the link's thread allocates per frame once warm: nothing, including the in-memory controller and its line. */
@Timeout(120)
class LinkAllocationTest {
    private static final int FAST = 50_000_000;
    private static final long PAUSE_NANOS = 100_000;

    private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private final FrameSlot slot = new FrameSlot(LinkRig.SETUP.stripBytes(), 1);
    private final MemoryController controller =
            new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {});
    private final ControllerLink link = new ControllerLink(
            new MemoryLine(controller, FAST, System::nanoTime), LinkRig.SETUP, slot, System::nanoTime);

    @Test
    void framesAllocateNothing() {
        link.start();
        show(3000);
        long thread = linkThread();
        long least = Long.MAX_VALUE;
        // A compiler that is still at work may allocate on the thread's account; a leak of a byte per frame shows in
        // every round.
        for (int round = 0; round < 3; round++) {
            long before = threads.getThreadAllocatedBytes(thread);
            show(1000);
            least = Math.min(least, threads.getThreadAllocatedBytes(thread) - before);
        }
        link.close();
        assertTrue(least < 1000, least + " bytes for 1000 frames");
    }

    private void show(int frames) {
        long target = link.status().framesShown() + frames;
        Await.until(frames + " frames", () -> {
            for (int i = 0; i < 20; i++) {
                Arrays.fill(slot.back().strip(), (byte) i);
                slot.publish();
                link.frameReady();
                LockSupport.parkNanos(PAUSE_NANOS);
            }
            return link.status().framesShown() >= target;
        });
    }

    private static long linkThread() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().equals("link"))
                .findFirst()
                .orElseThrow()
                .getId();
    }
}
