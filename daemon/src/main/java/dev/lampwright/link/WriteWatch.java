package dev.lampwright.link;

import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/**
 * Aborts a write that a device never accepts. If the driver reports how much is queued, nothing is written to a full queue; this is for
 * drivers that do not report it. Allocates nothing for a write.
 */
final class WriteWatch implements AutoCloseable {
    private static final long MOST = TimeUnit.SECONDS.toNanos(1);
    private static final Duration LOOK_EVERY = Duration.ofMillis(250);
    private static final long NOT_WRITING = Long.MIN_VALUE;

    private final Runnable abandon;
    private final Worker worker = new Worker("link watch", LOOK_EVERY, this::look);
    private volatile long since = NOT_WRITING;
    private volatile boolean fired;

    /**
     * Creates a watch that is not started.
     *
     * @param abandon aborts the write, by any means
     */
    WriteWatch(Runnable abandon) {
        this.abandon = abandon;
    }

    void start() {
        worker.start();
    }

    /** A write begins. */
    void begin() {
        since = System.nanoTime();
    }

    /** The write is over. */
    void end() {
        since = NOT_WRITING;
    }

    /** Whether a write has been abandoned. */
    boolean hasFired() {
        return fired;
    }

    /** Ends the watch without waiting for it. */
    @Override
    public void close() {
        worker.end(Duration.ZERO);
    }

    private void look() {
        long started = since;
        if (started != NOT_WRITING && System.nanoTime() - started > MOST) {
            fired = true;
            abandon.run();
            worker.close();
        }
    }
}
