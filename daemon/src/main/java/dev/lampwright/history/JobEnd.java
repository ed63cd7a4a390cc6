package dev.lampwright.history;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a job ended. */
public enum JobEnd {
    /** It has not: as far as is known it goes on. */
    RUNNING,
    /** The printer reported that it is done. */
    DONE,
    /** The printer reported that it was given up. */
    STOPPED,
    /** The printer was in a fault and then at rest. */
    FAULT,
    /** The printer went to rest and did not report how. */
    UNTOLD,
    /** Nobody saw: nothing was heard of the printer, or lampwright did not run. */
    UNSEEN;

    /**
     * The word for this.
     *
     * @return one lower-case word
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The one of a word; empty if there is none. */
    static Optional<JobEnd> of(String word) {
        return Arrays.stream(values()).filter(end -> end.word().equals(word)).findFirst();
    }
}
