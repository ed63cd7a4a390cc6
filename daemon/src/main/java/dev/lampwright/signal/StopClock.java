package dev.lampwright.signal;

/** A clock that runs and stands still. */
final class StopClock {
    private static final double SECONDS_PER_NANO = 1e-9;

    private double seconds;
    private long sinceNanos;
    private boolean runs;

    /**
     * Lets it run or stand still from now on.
     *
     * @param running whether it is to run
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
     * What it shows.
     *
     * @param nanos when, no earlier than it was last told to run or to stand still
     * @return s for which it has run
     */
    double at(long nanos) {
        return runs ? seconds + (nanos - sinceNanos) * SECONDS_PER_NANO : seconds;
    }
}
