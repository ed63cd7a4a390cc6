package dev.lampwright.history;

/**
 * How much may be written to a memory card: so many bytes a day, saved up to a limit. What is written is spent, even beyond what is
 * left; then nothing is to be written until it has come in again. For one thread.
 */
final class WriteBudget {
    private static final double MILLIS_PER_DAY = 86_400_000;

    private final double bytesPerMilli;
    private final double most;
    private double left;
    private long atMillis;

    /**
     * Makes a budget of which nothing is spent.
     *
     * @param bytesPerDay how much comes in
     * @param most how much can be saved up, in bytes
     * @param atMillis the time, in ms
     */
    WriteBudget(long bytesPerDay, long most, long atMillis) {
        bytesPerMilli = bytesPerDay / MILLIS_PER_DAY;
        this.most = most;
        left = most;
        this.atMillis = atMillis;
    }

    /** Whether there is anything left at some time. */
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
