package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;

/** The line cannot be opened, or is lost. The message is for the user: what, which port, what to do. */
public final class LineException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Phrase trouble;

    /**
     * Creates one that has no code.
     *
     * @param what for the user
     */
    public LineException(String what) {
        this(Phrase.plain(what));
    }

    /**
     * Creates one.
     *
     * @param trouble what is wrong
     */
    LineException(Phrase trouble) {
        super(trouble.english());
        this.trouble = trouble;
    }

    /**
     * What is wrong.
     *
     * @return the message, and its code if it has one
     */
    public Phrase trouble() {
        return trouble;
    }
}
