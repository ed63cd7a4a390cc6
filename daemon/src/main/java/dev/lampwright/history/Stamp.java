package dev.lampwright.history;

import java.time.Instant;

/**
 * When something was. While the process runs that saw it, that is by a clock that nobody sets, so a clock on the wall that is set meanwhile,
 * as on a board that learns the time only after its start, spoils neither times nor durations. What another run saw has the time that the
 * clock on the wall had in the end.
 *
 * @param millis ms since the machine was booted, or since 1970 in UTC
 * @param ofThisRun whether they count from the boot
 */
public record Stamp(long millis, boolean ofThisRun) {
    /** A time on the clock on the wall. */
    static Stamp wall(Instant when) {
        return new Stamp(when.toEpochMilli(), false);
    }

    /**
     * The same on the clock on the wall.
     *
     * @param wallAhead ms since 1970 less ms since the boot, as the clock on the wall is set now
     */
    Stamp wall(long wallAhead) {
        return ofThisRun ? new Stamp(millis + wallAhead, false) : this;
    }

    /**
     * The same on the clock on the wall.
     *
     * @return to the ms
     * @throws IllegalStateException if it is still on the other clock
     */
    public Instant instant() {
        if (ofThisRun) {
            throw new IllegalStateException("not on the clock on the wall");
        }
        return Instant.ofEpochMilli(millis);
    }
}
