package dev.lampwright.desk;

import java.time.Instant;

/**
 * The current time.
 *
 * @param nanos on the daemon's monotonic clock, by which asks from this run end
 * @param wall on the wall clock, used for what people read, for quiet hours, and for the end of asks from an earlier run
 */
record Now(long nanos, Instant wall) {}
