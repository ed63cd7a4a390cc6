package dev.lampwright.printer;

import dev.lampwright.payload.Quantity;

/**
 * One value from one message.
 *
 * @param value the value in the unit of its {@link Quantity}; NaN if unknown
 * @param atNanos when the message came, on the daemon's own monotonic clock, in ns
 */
public record Reading(double value, long atNanos) {
    /** The reading before the first message. */
    public static final Reading UNKNOWN = new Reading(Double.NaN, 0);

    /**
     * Whether this has another value than another reading, or came at another time. The same as {@code !equals}, without the 25 ms that the
     * Java runtime needs to generate a record's {@code equals} on first use.
     *
     * @param other another reading
     * @return true if anything differs
     */
    public boolean differsFrom(Reading other) {
        return atNanos != other.atNanos || Double.compare(value, other.value) != 0;
    }

    /**
     * Whether there is a value.
     *
     * @return false if the printer has not reported one, or reported something that is not a number
     */
    public boolean known() {
        return !Double.isNaN(value);
    }
}
