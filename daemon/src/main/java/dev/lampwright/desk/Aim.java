package dev.lampwright.desk;

/**
 * One thing that can be set, and returned to automatic.
 *
 * @param ask what sets it
 * @param name of the white light, zone or run of pixels; empty if there is only one
 */
record Aim(Ask ask, String name) {
    static Aim of(Ask ask) {
        return new Aim(ask, "");
    }
}
