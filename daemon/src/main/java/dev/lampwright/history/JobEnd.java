package dev.lampwright.history;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a job ended. */
public enum JobEnd {
    /** It has not ended: as far as is known, it continues. */
    RUNNING,
    /** The printer reported it as done. */
    DONE,
    /** The printer reported it as cancelled. */
    STOPPED,
    /** The printer had a fault and was then at rest. */
    FAULT,
    /** The printer came to rest without reporting how. */
    UNTOLD,
    /** Not seen: the printer was silent, or lampwright was not running. */
    UNSEEN;

    /**
     * The word for this.
     *
     * @return one lower-case word
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The one for a word; empty if there is none. */
    static Optional<JobEnd> of(String word) {
        return Arrays.stream(values()).filter(end -> end.word().equals(word)).findFirst();
    }
}
