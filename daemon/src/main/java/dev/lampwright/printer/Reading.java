package dev.lampwright.printer;

/**
 * One value from one message.
 *
 * @param value the value in the unit of its {@link Quantity}; NaN if it is not known
 * @param atNanos when the message came, on the daemon's own monotonic clock, in ns
 */
public record Reading(double value, long atNanos) {
    /** What is there before the first message. */
    public static final Reading UNKNOWN = new Reading(Double.NaN, 0);

    /**
     * Whether there is a value.
     *
     * @return false if the printer has not said, or has said something that is no number
     */
    public boolean known() {
        return !Double.isNaN(value);
    }
}
