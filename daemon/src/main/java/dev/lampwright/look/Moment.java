package dev.lampwright.look;

import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;

/** The time and the signals that a frame is drawn for. Made once and moved on. */
public final class Moment {
    private static final double SECONDS_PER_NANO = 1e-9;

    private final Signals signals;
    private long nanos;
    private double seconds;

    /**
     * Makes a moment.
     *
     * @param signals what light can follow
     */
    public Moment(Signals signals) {
        this.signals = signals;
    }

    /**
     * Moves on.
     *
     * @param nowNanos the time of the frame, on the clock of the signals
     * @param sinceNanos when the look came on
     */
    public void moveTo(long nowNanos, long sinceNanos) {
        nanos = nowNanos;
        seconds = (nowNanos - sinceNanos) * SECONDS_PER_NANO;
    }

    /**
     * How long the look has been on.
     *
     * @return seconds, 0 or more
     */
    public double seconds() {
        return seconds;
    }

    /**
     * A signal's value now.
     *
     * @param signal which
     * @return 0 to 1, NaN if it is unknown
     */
    public double value(Signal signal) {
        return signals.value(signal, nanos);
    }
}
