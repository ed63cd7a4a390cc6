package dev.lampwright.desk;

/** An ask is refused. The message says why and what would be valid, for the asker. */
final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Reason.Given reason;

    /**
     * Refuses.
     *
     * @param reason why
     * @param values in the order in which they appear in the reason's text
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
