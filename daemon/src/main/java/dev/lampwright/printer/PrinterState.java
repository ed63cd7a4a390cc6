package dev.lampwright.printer;

import java.util.Locale;

/** What the printer is doing. */
public enum PrinterState {
    /** Nothing has been heard, or not for long. */
    SILENT,
    /** On, and waiting. */
    IDLE,
    /** Heating up for a job. */
    WARMING,
    /** At work. */
    PRINTING,
    /** At work, but paused. */
    HELD,
    /** The job has been completed. */
    DONE,
    /** The job was cancelled. */
    STOPPED,
    /** Something is wrong. */
    FAULT;

    /**
     * The word for this in the configuration, the log and the terminal.
     *
     * @return one lower-case word
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
