package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;

/** The time and the signals that a look is drawn for. Created once and advanced. */
public final class Moment {
    private static final double SECONDS_PER_NANO = 1e-9;

    private final Signals signals;
    private long nanos;
    private double seconds;
    private boolean steady;

    /**
     * Creates a moment.
     *
     * @param signals what light can follow
     */
    public Moment(Signals signals) {
        this.signals = signals;
    }

    /**
     * Advances to another frame.
     *
     * @param nowNanos the time of the frame, on the clock of the signals
     * @param sinceNanos when the look started
     */
    public void moveTo(long nowNanos, long sinceNanos) {
        nanos = nowNanos;
        seconds = (nowNanos - sinceNanos) * SECONDS_PER_NANO;
    }

    /**
     * Sets whether light stays steady because a picture is being taken.
     *
     * @param still true stops every rhythm at full light
     */
    public void keepSteady(boolean still) {
        steady = still;
    }

    /**
     * How long the look has been shown.
     *
     * @return seconds, 0 or more
     */
    public double seconds() {
        return seconds;
    }

    /**
     * Whether light must stay steady.
     *
     * @return as set by {@link #keepSteady}
     */
    boolean steady() {
        return steady;
    }

    /**
     * A signal's value now.
     *
     * @param signal which
     * @return the value, NaN if unknown
     */
    public double value(Signal signal) {
        return signals.value(signal, nanos);
    }

    /**
     * How long a signal keeps its value, if nothing new is heard.
     *
     * @param signal which
     * @return ns: 0 while it moves, {@link Signals#FOREVER} if it does not
     */
    long stillFor(Signal signal) {
        return signals.stillFor(signal, nanos);
    }

    /**
     * Where a signal is between its bounds now.
     *
     * @param follow the signal and its bounds
     * @return 0 to 1, NaN if it is unknown
     */
    public double share(Follow follow) {
        return follow.share(value(follow.signal()));
    }
}
