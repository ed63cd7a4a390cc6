package dev.lampwright.desk;

import java.time.Instant;

/**
 * What time it is.
 *
 * @param nanos on the daemon's monotonic clock, by which what was asked for in this run ends
 * @param wall on the clock on the wall, by which people are told, the night begins, and what an earlier run was asked for ends
 */
record Now(long nanos, Instant wall) {}
