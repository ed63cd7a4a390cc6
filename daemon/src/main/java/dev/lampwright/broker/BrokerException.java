package dev.lampwright.broker;

/** The broker cannot be reached, refuses the login or is gone. The message is for the user: what, and what to do. */
final class BrokerException extends Exception {
    BrokerException(String message) {
        super(message);
    }

    BrokerException(String message, Throwable cause) {
        super(message, cause);
    }
}
