package dev.lampwright.desk;

/** What was asked for is not done. The message says why and what would be right, for whoever asked. */
final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    RefusedException(String why) {
        super(why, null, false, false);
    }
}
