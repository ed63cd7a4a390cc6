package dev.lampwright.link;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertFalse;

import dev.lampwright.testing.Await;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class OpenLinesTest {
    private static final long SHORT = TimeUnit.MILLISECONDS.toNanos(20);

    private final OpenLines lines = new OpenLines();

    @Test
    void theEndComesWithTheLastClose() throws InterruptedException {
        lines.opened("one");
        lines.opened("other");
        Thread end = new Thread(() -> lines.awaitNone(TimeUnit.HOURS.toNanos(1)));
        end.start();
        Await.until("the wait", () -> end.getState() == Thread.State.TIMED_WAITING);
        lines.closed("one");
        lines.closed("other");
        end.join(TimeUnit.SECONDS.toMillis(20));
        assertFalse(end.isAlive());
    }

    @Test
    void theEndWaitsForEachLineButNotForever() {
        lines.opened("one");
        lines.opened("other");
        lines.closed("one");
        long started = System.nanoTime();
        lines.awaitNone(SHORT);
        assertAtLeast(SHORT, System.nanoTime() - started);
    }

    @Test
    void theEndDoesNotWaitWhereNoneIsOpen() {
        lines.opened("one");
        lines.closed("one");
        lines.awaitNone(TimeUnit.HOURS.toNanos(1));
    }
}
