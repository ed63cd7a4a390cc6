package dev.lampwright.broker;

import java.time.Duration;
import java.util.concurrent.TimeUnit;

/**
 * Lets connections to a broker be attempted one after the other, {@link #APART} from each other, and only while the main connection to it is there. So a broker
 * that comes back is not met by all at once, and one that is gone is tried by the main connection alone. For any threads.
 */
final class Turnstile {
    /** Fifty a second. A handshake with TLS takes some milliseconds of a core at both ends (common practice, no source). */
    static final Duration APART = Duration.ofMillis(20);

    private boolean isOpen;
    private long opened;
    private long nextNanos = System.nanoTime();

    /** The main connection is there. */
    synchronized void open() {
        isOpen = true;
        opened++;
        notifyAll();
    }

    /**
     * How many times this had been opened, without waiting.
     *
     * @return 0 if the main connection is not there
     */
    synchronized long glance() {
        return isOpen ? opened : 0;
    }

    /** It is gone. */
    synchronized void shut() {
        isOpen = false;
    }

    /**
     * Waits for a turn.
     *
     * @return how many times this had been opened when the turn was given
     * @throws InterruptedException if this thread is to end
     */
    long await() throws InterruptedException {
        long times;
        long wait;
        synchronized (this) {
            while (!isOpen) {
                wait();
            }
            long now = System.nanoTime();
            wait = Math.max(0, nextNanos - now);
            nextNanos = now + wait + APART.toNanos();
            times = opened;
        }
        TimeUnit.NANOSECONDS.sleep(wait);
        return times;
    }
}
