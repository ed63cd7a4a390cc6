package dev.lampwright.desk;

/**
 * How something is to be done.
 *
 * @param end until when it is to count
 * @param fadeSeconds how long the light takes to change; NaN for as long as usual
 * @param words what an answer says about it, with a space before; empty if nobody said how
 */
record Manner(End end, double fadeSeconds, String words) {}
