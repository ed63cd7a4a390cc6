package dev.lampwright.link;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** The lines that are open now. Safe for many threads. */
final class OpenLines {
    private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(5);

    private final Set<Object> lines = ConcurrentHashMap.newKeySet();

    /** Call this when a line has been opened. */
    void opened(Object line) {
        lines.add(line);
    }

    /** Call this when an open line has been closed. */
    void closed(Object line) {
        lines.remove(line);
    }

    /**
     * Waits until no line is open.
     *
     * @param nanos how long at most
     */
    void awaitNone(long nanos) {
        long started = System.nanoTime();
        while (!lines.isEmpty() && System.nanoTime() - started < nanos) {
            LockSupport.parkNanos(this, LOOK_NANOS);
        }
    }
}
