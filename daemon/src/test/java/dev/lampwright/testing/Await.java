package dev.lampwright.testing;

import java.time.Duration;
import java.util.function.BooleanSupplier;

/** Waits for a condition, with a deadline. */
public final class Await {
    private static final long LOOK_EVERY_MS = 5;

    private Await() {}

    /**
     * Returns as soon as a condition holds.
     *
     * @param description what is waited for, for the failure message
     * @param deadline how long to wait at most
     * @param condition looked at every few ms
     * @throws AssertionError if it does not hold in time
     */
    public static void until(String description, Duration deadline, BooleanSupplier condition) {
        long start = System.nanoTime();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() - start > deadline.toNanos()) {
                throw new AssertionError("waited " + deadline.toMillis() + " ms in vain for: " + description);
            }
            pause();
        }
    }

    private static void pause() {
        try {
            Thread.sleep(LOOK_EVERY_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while waiting", e);
        }
    }
}
