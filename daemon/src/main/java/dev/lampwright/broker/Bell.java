package dev.lampwright.broker;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** Wakes the one thread that waits for it. Safe for many threads. */
final class Bell {
    private final Semaphore rung = new Semaphore(0);

    /** Ends the current {@link #await}, or the next one if nobody is waiting. Rings that nobody hears do not add up. */
    void ring() {
        if (rung.availablePermits() == 0) {
            rung.release();
        }
    }

    /**
     * Waits for a call of {@link #ring}.
     *
     * @param most how long to wait
     * @throws InterruptedException if this thread must end
     */
    void await(Duration most) throws InterruptedException {
        if (rung.tryAcquire(most.toNanos(), TimeUnit.NANOSECONDS)) {
            rung.drainPermits();
        }
    }
}
