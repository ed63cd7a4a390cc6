package dev.lampwright.signal;

/** A signal's value over time. */
interface Track {
    /**
     * The value at some time.
     *
     * @param nanos when, no earlier than what was last taken in
     * @return the value, NaN if it is unknown
     */
    double at(long nanos);

    /**
     * How long the value stays as it is, if nothing new is taken in.
     *
     * @param nanos from when on
     * @return ns: 0 while it moves, {@link Signals#FOREVER} if it does not
     */
    long stillFor(long nanos);
}
