package dev.lampwright.broker;

/** The broker cannot be reached, refuses the login or is gone. The message is for the user: what, and what to do. */
final class BrokerException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String code;

    BrokerException(String message) {
        super(message);
        code = "";
    }

    BrokerException(String message, Throwable cause) {
        this("", message, cause);
    }

    BrokerException(String code, String message, Throwable cause) {
        super(message, cause);
        this.code = code;
    }

    /** Identifies the reason for those with texts of their own; empty if it has no code. */
    String code() {
        return code;
    }
}
