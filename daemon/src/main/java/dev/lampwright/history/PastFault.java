package dev.lampwright.history;

import java.util.Optional;

/**
 * A fault.
 *
 * @param began when it was first seen
 * @param words the printer's own text about it, the last one reported; empty if none
 * @param over when the printer reported another state; empty while the fault lasts
 * @param overUnseen whether it passed earlier, unseen
 * @param acknowledged who acknowledged it first; empty if nobody has
 */
public record PastFault(
        Stamp began, String words, Optional<Stamp> over, boolean overUnseen, Optional<Acknowledgement> acknowledged) {
    /** A new one. */
    static PastFault began(Stamp at, String words) {
        return new PastFault(at, words, Optional.empty(), false, Optional.empty());
    }

    /** The same with a newer text, if there is one. */
    PastFault said(String newWords) {
        return newWords.isEmpty() ? this : new PastFault(began, newWords, over, overUnseen, acknowledged);
    }

    /** The same, over. */
    PastFault over(Stamp at, boolean unseen) {
        return new PastFault(began, words, Optional.of(at), unseen, acknowledged);
    }

    /** The same, acknowledged; the first one counts. */
    PastFault acknowledged(Acknowledgement acknowledgement) {
        return acknowledged.isPresent()
                ? this
                : new PastFault(began, words, over, overUnseen, Optional.of(acknowledgement));
    }

    /** The same with times on the wall clock. */
    PastFault wall(long wallAhead) {
        return new PastFault(
                began.wall(wallAhead),
                words,
                over.map(at -> at.wall(wallAhead)),
                overUnseen,
                acknowledged.map(one -> one.wall(wallAhead)));
    }
}
