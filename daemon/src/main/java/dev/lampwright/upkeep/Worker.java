package dev.lampwright.upkeep;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A thread that repeats one step with a pause in between, until it is closed. A step that fails does not end it: the failure is logged
 * once, as an internal error, and the next one only after a successful step. The first step runs at once. Interrupting the thread ends it
 * like {@link #close}.
 */
public final class Worker implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
    private static final Duration USUAL_END = Duration.ofSeconds(1);

    private final String name;
    private final long pauseNanos;
    private final LongSupplier step;
    private final Runnable last;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread;
    private boolean failing;

    /**
     * Creates a worker that does not run yet.
     *
     * @param name of the thread, which says what it does
     * @param pause time from the end of a step to the next
     * @param step the repeated step
     */
    public Worker(String name, Duration pause, Runnable step) {
        this(name, pause, step, () -> {});
    }

    /**
     * Creates a worker that does not run yet.
     *
     * @param name of the thread, which says what it does
     * @param pause time from the end of a step to the next
     * @param step the repeated step
     * @param last runs once, on the same thread, after the last step
     */
    public Worker(String name, Duration pause, Runnable step, Runnable last) {
        this(name, pause, always(pause, step), last);
    }

    private Worker(String name, Duration pause, LongSupplier step, Runnable last) {
        this.name = name;
        this.pauseNanos = pause.toNanos();
        this.step = step;
        this.last = last;
        thread = new Thread(this::run, RigName.thread(name));
        thread.setDaemon(true);
    }

    /**
     * Creates a worker that does not run yet, whose steps return how long to pause.
     *
     * @param name of the thread, which says what it does
     * @param afterFailure the pause after a step that failed
     * @param step the repeated step; returns the pause until the next, in ns, 0 or less for none
     * @return the worker
     */
    public static Worker paced(String name, Duration afterFailure, LongSupplier step) {
        return paced(name, afterFailure, step, () -> {});
    }

    /**
     * Creates a worker that does not run yet, whose steps return how long to pause.
     *
     * @param name of the thread, which says what it does
     * @param afterFailure the pause after a step that failed
     * @param step the repeated step; returns the pause until the next, in ns, 0 or less for none
     * @param last runs once, on the same thread, after the last step
     * @return the worker
     */
    public static Worker paced(String name, Duration afterFailure, LongSupplier step, Runnable last) {
        return new Worker(name, afterFailure, step, last);
    }

    private static LongSupplier always(Duration pause, Runnable step) {
        long nanos = pause.toNanos();
        return () -> {
            step.run();
            return nanos;
        };
    }

    /** Starts the thread. Call it once. */
    public void start() {
        thread.start();
    }

    /**
     * Whether the thread runs.
     *
     * @return false before {@link #start} and once it has ended
     */
    public boolean isAlive() {
        return thread.isAlive();
    }

    /** Ends the thread after its current step, and waits for that, a second at most. */
    @Override
    public void close() {
        end(USUAL_END);
    }

    /**
     * Ends the thread after its current step. An interrupt of the caller does not shorten the wait, and is preserved. A step that ends its
     * own worker does not wait.
     *
     * @param most how long to wait for the end
     * @return whether the thread has ended; also true if it was never started
     */
    public boolean end(Duration most) {
        closing.countDown();
        if (Thread.currentThread() == thread) {
            return false;
        }
        boolean interrupted = false;
        long end = System.nanoTime() + most.toNanos();
        for (long left = most.toNanos(); left > 0 && thread.isAlive(); left = end - System.nanoTime()) {
            try {
                TimeUnit.NANOSECONDS.timedJoin(thread, left);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        return !thread.isAlive();
    }

    private void run() {
        long pause = 0;
        while (!isClosedWithin(pause)) {
            pause = attempt(step);
        }
        attempt(() -> {
            last.run();
            return 0;
        });
    }

    private boolean isClosedWithin(long nanos) {
        try {
            return closing.await(nanos, TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            return true;
        }
    }

    /** Runs a step and returns how long to pause after it, in ns. */
    private long attempt(LongSupplier work) {
        try {
            long pause = work.getAsLong();
            failing = false;
            return pause;
        } catch (RuntimeException | Error e) {
            if (!failing) {
                LOG.error("{}: internal error (please report it); lampwright carries on", name, e);
            }
            failing = true;
            return pauseNanos;
        }
    }
}
