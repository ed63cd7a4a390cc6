package dev.lampwright.testing;

import static org.junit.jupiter.api.Assertions.fail;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** Waits for a condition, with a deadline that only a broken program meets. */
public final class Await {
    private static final Duration LONG = Duration.ofSeconds(20);
    private static final long LOOK_EVERY_NANOS = 1_000_000;

    private Await() {}

    /**
     * Waits until something is so, for 20 s at most.
     *
     * @param what named in the failure
     * @param condition looked at every millisecond
     */
    public static void until(String what, BooleanSupplier condition) {
        until(() -> what, condition, LONG);
    }

    /** Lets other threads run for a moment. */
    public static void pause() {
        LockSupport.parkNanos(LOOK_EVERY_NANOS / 10);
    }

    /**
     * Waits until something is so.
     *
     * @param what named in the failure
     * @param condition looked at every millisecond
     * @param most how long
     */
    public static void until(Supplier<String> what, BooleanSupplier condition, Duration most) {
        long started = System.nanoTime();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() - started > most.toNanos()) {
                fail("waited " + most + " in vain for: " + what.get());
            }
            LockSupport.parkNanos(LOOK_EVERY_NANOS);
        }
    }
}
