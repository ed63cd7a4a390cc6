package dev.lampwright.printer;

/** A payload, or a value in it, is not what a binding expects. The message is one clause for the user. */
final class UnreadableException extends Exception {
    UnreadableException(String message) {
        super(message, null, false, false);
    }
}
