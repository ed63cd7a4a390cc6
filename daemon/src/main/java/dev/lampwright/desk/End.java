package dev.lampwright.desk;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * When something that was asked for ends. What was asked for in this run ends by the monotonic clock, so that a clock on the wall that
 * is set meanwhile neither shortens nor prolongs it; what an earlier run was asked for ends by the clock on the wall, which may not be
 * right yet when the daemon starts.
 *
 * @param ends whether it ends by itself; if not, it stays until it is changed
 * @param nanos on the monotonic clock; of no meaning if there is a {@code wall}
 * @param wall on the clock on the wall
 */
record End(boolean ends, long nanos, Optional<Instant> wall) {
    /** Until something else is asked for. */
    static final End WHEN_CHANGED = new End(false, 0, Optional.empty());

    /** Longer than any daemon runs, and short enough for differences of times to be right. */
    private static final long FOR_GOOD_NANOS = TimeUnit.DAYS.toNanos(365 * 100);

    /** After a time from now on. */
    static End after(Duration time, Now now) {
        return new End(true, now.nanos() + time.toNanos(), Optional.empty());
    }

    /** At a time on the clock on the wall. */
    static End at(Instant wall) {
        return new End(true, 0, Optional.of(wall));
    }

    /** How long it still counts, in ns; 0 or less if it has ended. */
    long leftNanos(Now now) {
        if (!ends) {
            return FOR_GOOD_NANOS;
        }
        return wall.map(end -> nanosBetween(now.wall(), end)).orElse(nanos - now.nanos());
    }

    private static long nanosBetween(Instant from, Instant to) {
        Duration longest = Duration.ofNanos(FOR_GOOD_NANOS);
        Duration between = Duration.between(from, to);
        return between.abs().compareTo(longest) < 0
                ? between.toNanos()
                : (between.isNegative() ? -1 : 1) * FOR_GOOD_NANOS;
    }

    boolean isOver(Now now) {
        return leftNanos(now) <= 0;
    }

    /** When that is on the clock on the wall, as it goes now. */
    Instant wallTime(Now now) {
        return wall.orElseGet(() -> now.wall().plusNanos(leftNanos(now)));
    }
}
