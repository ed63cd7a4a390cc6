package dev.lampwright.cli;

import dev.lampwright.log.LogSetup;

/** What is logged, where it is not what a daemon logs. */
final class LogSettings {
    private LogSettings() {}

    /** Nothing: the command itself says what went wrong. */
    static void silent() {
        LogSetup.nothing();
    }

    /** Only troubles, since something is drawn in the terminal. */
    static void forPicture() {
        LogSetup.onlyTroubles();
    }
}
