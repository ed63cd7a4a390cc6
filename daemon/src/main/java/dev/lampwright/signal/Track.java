package dev.lampwright.signal;

/** A signal's value over time. */
interface Track {
    /**
     * The value at a time.
     *
     * @param nanos when, no earlier than what was last taken in
     * @return the value, NaN if unknown
     */
    double at(long nanos);

    /**
     * How long the value stays the same, if nothing new is taken in.
     *
     * @param nanos start of the period
     * @return ns: 0 while it moves, {@link Signals#FOREVER} if it does not
     */
    long stillFor(long nanos);
}
