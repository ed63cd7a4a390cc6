package dev.lampwright.history;

/**
 * What can be seen of printer and light at a moment.
 *
 * @param silent whether the printer is silent
 * @param faultText its own text about what is wrong; empty if there is none
 * @param progress completed share of the job, 0 to 1; NaN for unknown
 * @param bedC temperature of the bed in °C; NaN for unknown
 * @param nozzleC temperature of the nozzle in °C; NaN for unknown
 * @param milliamps what the strip draws, in mA
 * @param alarm whether the alarm is on, acknowledged or not
 */
public record Glance(
        boolean silent, String faultText, double progress, double bedC, double nozzleC, int milliamps, boolean alarm) {}
