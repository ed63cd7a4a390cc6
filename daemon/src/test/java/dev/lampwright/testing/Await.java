package dev.lampwright.testing;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** Waits for a condition instead of sleeping and hoping. */
public final class Await {
    /** How long tests wait for what should come soon. */
    static final Duration LONG = Duration.ofSeconds(20);

    private static final long LOOK_EVERY_MS = 2;

    private Await() {}

    /**
     * Waits until something holds, twenty seconds at most.
     *
     * @param description what is waited for, for the failure
     * @param condition checked repeatedly
     * @throws AssertionError if it does not hold in time
     */
    public static void until(String description, BooleanSupplier condition) {
        until(description, LONG, condition);
    }

    /**
     * Waits until something holds.
     *
     * @param description what is waited for, for the failure
     * @param deadline how long at most
     * @param condition checked repeatedly
     * @throws AssertionError if it does not hold in time
     */
    public static void until(String description, Duration deadline, BooleanSupplier condition) {
        until(() -> description, condition, deadline);
    }

    /**
     * Waits until something holds, and describes the situation if it does not.
     *
     * @param description called only when the wait is over
     * @param condition checked repeatedly
     * @param deadline how long at most
     * @throws AssertionError if it does not hold in time
     */
    public static void until(Supplier<String> description, BooleanSupplier condition, Duration deadline) {
        long end = System.nanoTime() + deadline.toNanos();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() - end > 0) {
                throw new AssertionError("after " + deadline.toMillis() + " ms not yet: " + description.get());
            }
            pause();
        }
    }

    /** The pause between two checks of a condition. */
    public static void pause() {
        try {
            Thread.sleep(LOOK_EVERY_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while waiting", e);
        }
    }
}
