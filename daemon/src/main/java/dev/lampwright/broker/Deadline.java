package dev.lampwright.broker;

import java.time.Duration;

/**
 * A point in monotonic time.
 *
 * @param nanos what {@link System#nanoTime} says then
 */
record Deadline(long nanos) {
    static Deadline in(Duration wait) {
        return new Deadline(System.nanoTime() + wait.toNanos());
    }

    boolean isPast() {
        return nanos - System.nanoTime() <= 0;
    }

    /** How long it is until then; not positive once it is past. */
    Duration left() {
        return Duration.ofNanos(nanos - System.nanoTime());
    }
}
