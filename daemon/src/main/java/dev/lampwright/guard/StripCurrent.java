package dev.lampwright.guard;

/**
 * What a frame takes from the strip's supply, beside what it may take.
 *
 * @param milliamps what it takes, in mA, rounded up
 * @param ceilingMilliamps the most that it may take, in mA
 */
public record StripCurrent(int milliamps, int ceilingMilliamps) {}
