package dev.lampwright.desk;

/**
 * An ask in effect.
 *
 * @param setting what was asked for
 * @param end until when it applies
 */
record Held(Setting setting, End end) {}
