package dev.lampwright.link;

/** The controller answers, but cannot do what is required. The message is for the user: what does not fit, and what to do. */
final class UnfitException extends Exception {
    private static final long serialVersionUID = 1L;

    UnfitException(String what) {
        super(what);
    }
}
