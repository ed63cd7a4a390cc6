package dev.lampwright.upkeep;

import java.time.Duration;
import java.util.function.DoubleSupplier;

/** The pauses between attempts: each twice the one before up to the longest, and up to a quarter shorter by chance if so asked. */
public final class Backoff {
    private static final double MOST_OFF = 0.25;

    private final Duration first;
    private final Duration longest;
    private final DoubleSupplier chance;
    private Duration next;

    /**
     * Starts with the first pause, and leaves nothing to chance.
     *
     * @param first the first pause
     * @param longest no pause is longer
     */
    public Backoff(Duration first, Duration longest) {
        this(first, longest, () -> 0);
    }

    /**
     * Starts with the first pause.
     *
     * @param first the first pause
     * @param longest no pause is longer
     * @param chance numbers of 0 to 1, which keep many clients from coming back at the same moment
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
     * @return at most the longest
     */
    public Duration next() {
        Duration pause = next;
        Duration twice = pause.multipliedBy(2);
        next = twice.compareTo(longest) < 0 ? twice : longest;
        return Duration.ofNanos(Math.round(pause.toNanos() * (1 - MOST_OFF * chance.getAsDouble())));
    }
}
