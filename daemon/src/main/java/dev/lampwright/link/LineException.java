package dev.lampwright.link;

/** The line cannot be opened, or is lost. The message is for the user: what, which port, what to do. */
public final class LineException extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param what for the user
     */
    public LineException(String what) {
        super(what);
    }
}
