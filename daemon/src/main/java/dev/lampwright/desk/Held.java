package dev.lampwright.desk;

/**
 * Something that was asked for and counts.
 *
 * @param setting what was asked for
 * @param end until when it counts
 */
record Held(Setting setting, End end) {}
