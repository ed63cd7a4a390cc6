package dev.lampwright.desk;

/** What was asked for is not done. The message says why and what would be right, for whoever asked. */
final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Reason.Given reason;

    /**
     * Refuses.
     *
     * @param reason why
     * @param values in the order in which the reason's text has them
     */
    RefusedException(Reason reason, Object... values) {
        this(reason.with(values));
    }

    private RefusedException(Reason.Given reason) {
        super(reason.text(), null, false, false);
        this.reason = reason;
    }

    Reason.Given reason() {
        return reason;
    }
}
