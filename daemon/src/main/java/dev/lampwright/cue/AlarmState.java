package dev.lampwright.cue;

import java.util.Locale;

/** The state of an alarm. Source of the words: ANSI/ISA-18.1. */
public enum AlarmState {
    /** There is no fault. */
    NORMAL,
    /** There is, or was, a fault that nobody has acknowledged. */
    ALERT,
    /** The fault is acknowledged; it persists, or waits for a reset. */
    ACKNOWLEDGED,
    /** The fault is acknowledged and over, which is signalled until it is reset. */
    RINGBACK;

    /**
     * The word for this in the configuration.
     *
     * @return in lower case
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
