package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;

/**
 * What the printer was seen doing.
 *
 * @param state in a word
 * @param faultText its own words for what is wrong; empty if it says nothing
 * @param progress share of the job that is done, 0 to 1; NaN for unknown
 */
public record Sighting(PrinterState state, String faultText, double progress) {}
