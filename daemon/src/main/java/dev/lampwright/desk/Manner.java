package dev.lampwright.desk;

/**
 * How an ask is carried out.
 *
 * @param end until when it applies
 * @param fadeSeconds how long the light takes to change; NaN for the default time
 * @param words what an answer says about it, with a leading space; empty if the ask does not say how
 */
record Manner(End end, double fadeSeconds, String words) {}
