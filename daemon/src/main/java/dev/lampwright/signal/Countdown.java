package dev.lampwright.signal;

/** Time left until an end. It runs by itself between messages, stops with its clock, and is never below 0. */
final class Countdown implements Track {
    private final StopClock clock;
    private final Glide end = new Glide();

    /**
     * Creates one without an end, so that time left is unknown.
     *
     * @param clock on which the end is given
     */
    Countdown(StopClock clock) {
        this.clock = clock;
    }

    /**
     * Sets the end that a message gives, or that follows from it.
     *
     * @param seconds on the clock; NaN for unknown
     * @param atNanos when the message came
     */
    void to(double seconds, long atNanos) {
        end.to(seconds, atNanos);
    }

    @Override
    public double at(long nanos) {
        return Math.max(0, end.at(nanos) - clock.at(nanos));
    }

    @Override
    public long stillFor(long nanos) {
        boolean runs = clock.runs() && end.at(nanos) > clock.at(nanos);
        return runs ? 0 : end.stillFor(nanos);
    }
}
