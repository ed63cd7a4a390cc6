package dev.lampwright.history;

/**
 * How much may be written to a memory card: a number of bytes per day, saved up to a limit. What is written is spent, even beyond the
 * balance; then nothing may be written until the balance is positive again. For one thread.
 */
final class WriteBudget {
    private static final double MILLIS_PER_DAY = 86_400_000;

    private final double bytesPerMilli;
    private final double most;
    private double left;
    private long atMillis;

    /**
     * Creates a budget of which nothing is spent.
     *
     * @param bytesPerDay how much is added per day
     * @param most how much can be saved up, in bytes
     * @param atMillis the time, in ms
     */
    WriteBudget(long bytesPerDay, long most, long atMillis) {
        bytesPerMilli = bytesPerDay / MILLIS_PER_DAY;
        this.most = most;
        left = most;
        this.atMillis = atMillis;
    }

    /** Whether there is anything left at a given time. */
    boolean allows(long nowMillis) {
        left = Math.min(most, left + Math.max(0, nowMillis - atMillis) * bytesPerMilli);
        atMillis = nowMillis;
        return left > 0;
    }

    /** Counts what was written. */
    void spend(long bytes) {
        left -= bytes;
    }
}
