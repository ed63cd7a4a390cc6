package dev.lampwright.signal;

/** A clock that can be stopped. */
final class StopClock {
    private static final double SECONDS_PER_NANO = 1e-9;

    private double seconds;
    private long sinceNanos;
    private boolean runs;

    /**
     * Starts or stops it from now on.
     *
     * @param running whether it runs
     * @param nanos now, no earlier than before
     */
    void run(boolean running, long nanos) {
        if (running != runs) {
            seconds = at(nanos);
            sinceNanos = nanos;
            runs = running;
        }
    }

    /** Whether it runs. */
    boolean runs() {
        return runs;
    }

    /**
     * The time on the clock.
     *
     * @param nanos when, no earlier than it was last started or stopped
     * @return s for which it has run
     */
    double at(long nanos) {
        return runs ? seconds + (nanos - sinceNanos) * SECONDS_PER_NANO : seconds;
    }
}
