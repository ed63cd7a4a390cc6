package dev.lampwright.cli;

import dev.lampwright.log.LogSetup;

/** Log settings of commands other than the daemon. */
final class LogSettings {
    private LogSettings() {}

    /** Nothing: the command itself reports what went wrong. */
    static void silent() {
        LogSetup.nothing();
    }

    /** Only problems, because something is drawn in the terminal. */
    static void forPicture() {
        LogSetup.onlyTroubles();
    }
}
