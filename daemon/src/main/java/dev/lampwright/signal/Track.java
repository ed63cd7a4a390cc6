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
}
