package dev.lampwright.link;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class WriteWatchTest {
    private final AtomicInteger abandoned = new AtomicInteger();

    @Test
    void abandonsAWriteThatDoesNotEndAndThenItself() {
        WriteWatch watch = new WriteWatch(abandoned::incrementAndGet);
        watch.start();
        long started = System.nanoTime();
        watch.begin();
        Await.until("the end of the write", () -> abandoned.get() == 1);
        assertAbove(1_000_000_000, System.nanoTime() - started);
        assertTrue(watch.hasFired());
        Await.until("the watch's own end", () -> !isWatching());
    }

    @Test
    void leavesWritesThatEndAlone() {
        WriteWatch watch = new WriteWatch(abandoned::incrementAndGet);
        watch.start();
        long started = System.nanoTime();
        Await.until("more than a second of writing", () -> {
            watch.begin();
            watch.end();
            return System.nanoTime() - started > 1_500_000_000;
        });
        watch.close();
        Await.until("the watch's own end", () -> !isWatching());
        assertEquals(0, abandoned.get());
        assertFalse(watch.hasFired());
    }

    private static boolean isWatching() {
        return Thread.getAllStackTraces().keySet().stream()
                .anyMatch(thread -> thread.getName().equals("link watch"));
    }
}
