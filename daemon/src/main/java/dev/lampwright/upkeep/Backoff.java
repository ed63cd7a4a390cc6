package dev.lampwright.upkeep;

import java.time.Duration;
import java.util.function.DoubleSupplier;

/** The pauses between attempts: each twice the previous one up to the longest, optionally shortened at random by up to a quarter. */
public final class Backoff {
    private static final double MOST_OFF = 0.25;

    private final Duration first;
    private final Duration longest;
    private final DoubleSupplier chance;
    private Duration next;

    /**
     * Starts with the first pause, without randomness.
     *
     * @param first the first pause
     * @param longest the maximum pause
     */
    public Backoff(Duration first, Duration longest) {
        this(first, longest, () -> 0);
    }

    /**
     * Starts with the first pause.
     *
     * @param first the first pause
     * @param longest the maximum pause
     * @param chance random numbers from 0 to 1, which prevent many clients from reconnecting at the same moment
     */
    public Backoff(Duration first, Duration longest, DoubleSupplier chance) {
        this.first = first;
        this.longest = longest;
        this.chance = chance;
        this.next = first;
    }

    /** Goes back to the first pause. */
    public void reset() {
        next = first;
    }

    /**
     * The next pause.
     *
     * @return the pause, at most the longest
     */
    public Duration next() {
        Duration pause = next;
        Duration twice = pause.multipliedBy(2);
        next = twice.compareTo(longest) < 0 ? twice : longest;
        return Duration.ofNanos(Math.round(pause.toNanos() * (1 - MOST_OFF * chance.getAsDouble())));
    }
}
