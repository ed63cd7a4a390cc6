package dev.lampwright.upkeep;

import org.slf4j.Logger;

/** Limits warnings whose number depends on others: logs a number per minute, and only counts the rest. For one thread at a time. */
public final class LineBudget {
    private static final long MINUTE_NANOS = 60_000_000_000L;

    private final Logger log;
    private final int most;
    private final String what;
    private long beganNanos;
    private int count;

    /**
     * Starts with the full budget.
     *
     * @param log where the lines go
     * @param most lines per minute
     * @param what there are too many of, in the plural, following a number
     */
    public LineBudget(Logger log, int most, String what) {
        this.log = log;
        this.most = most;
        this.what = what;
    }

    /**
     * Logs a line, if the budget of this minute allows it.
     *
     * @param line one line
     * @param atNanos the monotonic time, in ns
     */
    public void warn(String line, long atNanos) {
        if (count > 0 && atNanos - beganNanos >= MINUTE_NANOS) {
            tellRest();
            count = 0;
        }
        if (count == 0) {
            beganNanos = atNanos;
        }
        count++;
        if (count <= most) {
            log.warn("{}", line);
        } else if (count == most + 1) {
            log.warn("more {} follow; they are counted, and logged again after a minute", what);
        }
    }

    private void tellRest() {
        if (count > most) {
            log.warn("{} more {} in the last minute", count - most, what);
        }
    }
}
