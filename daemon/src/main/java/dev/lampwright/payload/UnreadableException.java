package dev.lampwright.payload;

/** A payload, or a value in it, is not what a binding expects. The message is one clause for the user. */
public final class UnreadableException extends Exception {
    public UnreadableException(String message) {
        super(message, null, false, false);
    }
}
