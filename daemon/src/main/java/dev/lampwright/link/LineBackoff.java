package dev.lampwright.link;

import java.util.concurrent.TimeUnit;

/** How long to wait before the line is opened again: a quarter of a second, then twice as long each time, up to a second. */
final class LineBackoff {
    private static final long SHORTEST = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long LONGEST = TimeUnit.SECONDS.toNanos(1);

    private long next = SHORTEST;

    /** The next wait, in ns. */
    long next() {
        long wait = next;
        next = Math.min(LONGEST, 2 * next);
        return wait;
    }

    /** Starts again from the shortest. */
    void restart() {
        next = SHORTEST;
    }
}
