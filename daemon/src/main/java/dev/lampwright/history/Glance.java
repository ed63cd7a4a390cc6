package dev.lampwright.history;

/**
 * What can be seen of printer and light at any time.
 *
 * @param silent whether nothing is heard of the printer
 * @param faultText its own words for what is wrong; empty if it says nothing
 * @param progress share of the job that is done, 0 to 1; NaN for unknown
 * @param bedC temperature of the bed in °C; NaN for unknown
 * @param nozzleC temperature of the nozzle in °C; NaN for unknown
 * @param milliamps what the strip takes, in mA
 * @param alarm whether the alarm is on, be it acknowledged or not
 */
public record Glance(
        boolean silent, String faultText, double progress, double bedC, double nozzleC, int milliamps, boolean alarm) {}
