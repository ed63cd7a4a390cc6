package dev.lampwright.desk;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * When an ask ends. An ask from this run ends by the monotonic clock, so that setting the wall clock neither shortens nor prolongs it; an
 * ask from an earlier run ends by the wall clock, which may not be right yet when the daemon starts.
 *
 * @param ends whether it ends by itself; if not, it stays until it is changed
 * @param nanos on the monotonic clock; meaningless if there is a {@code wall}
 * @param wall on the wall clock
 */
record End(boolean ends, long nanos, Optional<Instant> wall) {
    /** Until something else is asked for. */
    static final End WHEN_CHANGED = new End(false, 0, Optional.empty());

    /** Longer than any daemon runs, and short enough for time differences not to overflow. */
    private static final long FOR_GOOD_NANOS = TimeUnit.DAYS.toNanos(365 * 100);

    /** After a time from now on. */
    static End after(Duration time, Now now) {
        return new End(true, now.nanos() + time.toNanos(), Optional.empty());
    }

    /** At a time on the wall clock. */
    static End at(Instant wall) {
        return new End(true, 0, Optional.of(wall));
    }

    /** The time until the end, in ns; 0 or less if it has ended. */
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

    /** That time on the wall clock, as the clock is set now. */
    Instant wallTime(Now now) {
        return wall.orElseGet(() -> now.wall().plusNanos(leftNanos(now)));
    }
}
