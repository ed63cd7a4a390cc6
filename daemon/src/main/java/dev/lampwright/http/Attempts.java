package dev.lampwright.http;

import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;

/**
 * When to retry what was not available, and what to log about it: a problem when it begins, and again only if it changes. For one thread at
 * a time.
 */
final class Attempts {
    private static final long PAUSE_NANOS = TimeUnit.SECONDS.toNanos(RetriedServer.PAUSE_S);

    private final Logger log;
    private final LongSupplier nanoClock;
    private String trouble = "";
    private long failedAtNanos;

    /**
     * Starts without a problem.
     *
     * @param log receives problems
     * @param nanoClock monotonic time, in ns
     */
    Attempts(Logger log, LongSupplier nanoClock) {
        this.log = log;
        this.nanoClock = nanoClock;
    }

    /**
     * Reports that an attempt has failed.
     *
     * @param words what is wrong and what to do, for the user; not empty
     */
    void failed(String words) {
        if (!words.equals(trouble)) {
            log.warn("{}; trying again every {} s", words, RetriedServer.PAUSE_S);
        }
        trouble = words;
        failedAtNanos = nanoClock.getAsLong();
    }

    /** Reports success, or that something else is wanted: nothing needs to be retried, and the next problem is a new one. */
    void over() {
        trouble = "";
    }

    /**
     * Whether it is time to try again.
     *
     * @return false if the last attempt has not failed, or failed less than {@link RetriedServer#PAUSE_S} ago
     */
    boolean areDue() {
        return !trouble.isEmpty() && nanoClock.getAsLong() - failedAtNanos >= PAUSE_NANOS;
    }
}
