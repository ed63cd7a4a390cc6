package dev.lampwright.history;

import java.time.Instant;

/**
 * The time of an event. While the process that saw it runs, the time is on a clock that nobody sets, so setting the wall clock in the
 * meantime, as on a board that learns the time only after its start, affects neither times nor durations. Events from another run have the
 * time that the wall clock had at that run's end.
 *
 * @param millis ms since the machine was booted, or since 1970 in UTC
 * @param ofThisRun whether they count from the boot
 */
public record Stamp(long millis, boolean ofThisRun) {
    /** A time on the wall clock. */
    static Stamp wall(Instant when) {
        return new Stamp(when.toEpochMilli(), false);
    }

    /**
     * The same on the wall clock.
     *
     * @param wallAhead ms since 1970 minus ms since the boot, as the wall clock is set now
     */
    Stamp wall(long wallAhead) {
        return ofThisRun ? new Stamp(millis + wallAhead, false) : this;
    }

    /**
     * The same on the wall clock.
     *
     * @return to the ms
     * @throws IllegalStateException if it is still on the other clock
     */
    public Instant instant() {
        if (ofThisRun) {
            throw new IllegalStateException("not on the wall clock");
        }
        return Instant.ofEpochMilli(millis);
    }
}
