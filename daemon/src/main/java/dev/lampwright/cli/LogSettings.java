package dev.lampwright.cli;

import dev.lampwright.log.Journal;
import dev.lampwright.log.Log;

/** What the log looks like. */
final class LogSettings {
    private LogSettings() {}

    /** Lines for the journal where they go to it, lines for people elsewhere. */
    static void forDaemon() {
        String stream = System.getenv("JOURNAL_STREAM");
        if (Journal.takesStandardError(stream == null ? "" : stream)) {
            Log.toJournal();
        }
    }

    /** Nothing: the command itself says what went wrong. */
    static void silent() {
        Log.nothing();
    }

    /** Only troubles, since something is drawn in the terminal. */
    static void forPicture() {
        Log.onlyTroubles();
    }
}
