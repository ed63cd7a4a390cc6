package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;

/**
 * What the printer was seen doing.
 *
 * @param state one word
 * @param faultText its own text about what is wrong; empty if there is none
 * @param progress completed share of the job, 0 to 1; NaN for unknown
 */
public record Sighting(PrinterState state, String faultText, double progress) {}
