package dev.lampwright.guard;

/**
 * What a frame draws from the strip's supply, and the ceiling.
 *
 * @param milliamps what it draws, in mA, rounded up
 * @param ceilingMilliamps the most that it may draw, in mA
 */
public record StripCurrent(int milliamps, int ceilingMilliamps) {}
