package dev.lampwright.testing;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Measures how long this machine makes a runnable thread wait: delays caused by that are not the daemon's fault. May be used by several
 * threads.
 */
public final class Heartbeat implements AutoCloseable {
    private static final long BEAT = TimeUnit.MILLISECONDS.toNanos(5);
    private static final long WORTH_KEEPING = TimeUnit.MILLISECONDS.toNanos(5);
    private static final long KEPT = TimeUnit.MINUTES.toNanos(2);

    private final Deque<Delay> delays = new ArrayDeque<>();
    private final Thread thread = new Thread(this::run, "heartbeat");
    private volatile boolean closed;
    private long longest;

    private record Delay(long atNanos, long nanos) {}

    /** Starts to measure. */
    public void start() {
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * The total time that a thread waited to run.
     *
     * @param from start, on the clock of {@link System#nanoTime}
     * @param to end
     * @return ns
     */
    public synchronized long sumBetween(long from, long to) {
        return delays.stream()
                .filter(delay -> delay.atNanos - from >= 0 && delay.atNanos - delay.nanos - to <= 0)
                .mapToLong(Delay::nanos)
                .sum();
    }

    /**
     * The longest single time that a thread waited to run.
     *
     * @param from start, on the clock of {@link System#nanoTime}
     * @param to end
     * @return ns
     */
    public synchronized long longestBetween(long from, long to) {
        return delays.stream()
                .filter(delay -> delay.atNanos - from >= 0 && delay.atNanos - delay.nanos - to <= 0)
                .mapToLong(Delay::nanos)
                .max()
                .orElse(0);
    }

    /** The longest of all, in ns. */
    public synchronized long longest() {
        return longest;
    }

    /** Notes a delay. */
    public synchronized void late(long atNanos, long nanos) {
        delays.add(new Delay(atNanos, nanos));
        longest = Math.max(longest, nanos);
        while (atNanos - delays.element().atNanos > KEPT) {
            delays.remove();
        }
    }

    private void run() {
        long before = System.nanoTime();
        while (!closed) {
            LockSupport.parkNanos(BEAT);
            long now = System.nanoTime();
            if (now - before - BEAT > WORTH_KEEPING) {
                late(now, now - before - BEAT);
            }
            before = now;
        }
    }

    @Override
    public void close() {
        closed = true;
        LockSupport.unpark(thread);
    }
}
