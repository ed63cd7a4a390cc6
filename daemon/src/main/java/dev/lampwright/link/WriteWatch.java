package dev.lampwright.link;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Ends a write that a device never takes. A device whose driver tells how much is queued is never written to when it is full;
 * this is for those whose driver does not tell. Allocates nothing for a write.
 */
final class WriteWatch implements AutoCloseable {
    private static final long MOST = TimeUnit.SECONDS.toNanos(1);
    private static final long LOOK_EVERY = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long NOT_WRITING = Long.MIN_VALUE;

    private final Runnable abandon;
    private final Thread thread;
    private volatile long since = NOT_WRITING;
    private volatile boolean fired;
    private volatile boolean closed;

    /**
     * Makes a watch that is not started.
     *
     * @param abandon ends the write, by whatever means
     */
    WriteWatch(Runnable abandon) {
        this.abandon = abandon;
        thread = new Thread(this::watch, "link watch");
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
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

    @Override
    public void close() {
        closed = true;
        LockSupport.unpark(thread);
    }

    private void watch() {
        while (!closed) {
            LockSupport.parkNanos(this, LOOK_EVERY);
            long started = since;
            if (started != NOT_WRITING && System.nanoTime() - started > MOST) {
                fired = true;
                abandon.run();
                return;
            }
        }
    }
}
