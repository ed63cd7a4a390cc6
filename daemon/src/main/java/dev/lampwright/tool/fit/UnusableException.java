package dev.lampwright.tool.fit;

/** An answer that makes no sense. The text says what would. */
final class UnusableException extends Exception {
    private static final long serialVersionUID = 1L;

    UnusableException(String whatWouldBeRight) {
        super(whatWouldBeRight);
    }
}
