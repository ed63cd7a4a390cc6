package dev.lampwright.http;

import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;

/**
 * When to try again what could not be had, and what the log hears of it: a trouble when it begins, and again only if it becomes another.
 * For one thread at a time.
 */
final class Attempts {
    private static final long PAUSE_NANOS = TimeUnit.SECONDS.toNanos(RetriedServer.PAUSE_S);

    private final Logger log;
    private final LongSupplier nanoClock;
    private String trouble = "";
    private long failedAtNanos;

    /**
     * Begins without a trouble.
     *
     * @param log hears of troubles
     * @param nanoClock monotonic time, in ns
     */
    Attempts(Logger log, LongSupplier nanoClock) {
        this.log = log;
        this.nanoClock = nanoClock;
    }

    /**
     * An attempt has failed.
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

    /** All is well, or something else is wanted: there is nothing to try again, and the next trouble is a new one. */
    void over() {
        trouble = "";
    }

    /**
     * Whether it is time to try again.
     *
     * @return false if the last attempt has not failed, or did so less than {@link RetriedServer#PAUSE_S} ago
     */
    boolean areDue() {
        return !trouble.isEmpty() && nanoClock.getAsLong() - failedAtNanos >= PAUSE_NANOS;
    }
}
