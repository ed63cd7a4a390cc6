package dev.lampwright.history;

import java.util.Optional;

/**
 * A fault.
 *
 * @param began when it was first seen
 * @param words the printer's own words for it, the last that it said; empty if it said nothing
 * @param over when the printer reported another state; empty while the fault lasts
 * @param overUnseen whether it passed before that, while nobody saw it
 * @param acknowledged who acknowledged it first; empty if nobody has
 */
public record PastFault(
        Stamp began, String words, Optional<Stamp> over, boolean overUnseen, Optional<Acknowledgement> acknowledged) {
    /** One that begins. */
    static PastFault began(Stamp at, String words) {
        return new PastFault(at, words, Optional.empty(), false, Optional.empty());
    }

    /** The same with newer words, if there are any. */
    PastFault said(String newWords) {
        return newWords.isEmpty() ? this : new PastFault(began, newWords, over, overUnseen, acknowledged);
    }

    /** The same, over. */
    PastFault over(Stamp at, boolean unseen) {
        return new PastFault(began, words, Optional.of(at), unseen, acknowledged);
    }

    /** The same, acknowledged; who did that first counts. */
    PastFault acknowledged(Acknowledgement acknowledgement) {
        return acknowledged.isPresent()
                ? this
                : new PastFault(began, words, over, overUnseen, Optional.of(acknowledgement));
    }

    /** The same with times on the clock on the wall. */
    PastFault wall(long wallAhead) {
        return new PastFault(
                began.wall(wallAhead),
                words,
                over.map(at -> at.wall(wallAhead)),
                overUnseen,
                acknowledged.map(one -> one.wall(wallAhead)));
    }
}
