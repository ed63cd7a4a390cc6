package dev.lampwright.upkeep;

import java.time.Duration;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Repeats one step with a pause in between, until it is closed: on a thread of its own, unless other {@link Hands} do the work. A step that
 * fails does not end it: the failure is logged once, as an internal error, and the next one only after a successful step. The first step
 * runs at once. Interrupting a thread of its own ends it like {@link #close}.
 */
public final class Worker implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
    private static final Duration USUAL_END = Duration.ofSeconds(1);

    private final String name;
    private final long pauseNanos;
    private final LongSupplier step;
    private final Runnable last;
    private final Hands.Job job;
    private volatile boolean closing;
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
        this(Hands.ofItsOwn(), name, pause, step, last);
    }

    /**
     * Creates a worker that does not run yet.
     *
     * @param hands who does the work
     * @param name what it does
     * @param pause time from the end of a step to the next
     * @param step the repeated step
     * @param last runs once after the last step
     */
    public Worker(Hands hands, String name, Duration pause, Runnable step, Runnable last) {
        this(hands, name, pause, always(pause, step), last);
    }

    private Worker(Hands hands, String name, Duration pause, LongSupplier step, Runnable last) {
        this.name = name;
        this.pauseNanos = pause.toNanos();
        this.step = step;
        this.last = last;
        job = hands.take(name, this::turn, () -> closing = true);
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
        return new Worker(Hands.ofItsOwn(), name, afterFailure, step, last);
    }

    private static LongSupplier always(Duration pause, Runnable step) {
        long nanos = pause.toNanos();
        return () -> {
            step.run();
            return nanos;
        };
    }

    /** Starts the work. Call it once. */
    public void start() {
        job.start();
    }

    /**
     * Whether it works.
     *
     * @return false before {@link #start} and once it has ended
     */
    public boolean isAlive() {
        return job.isAlive();
    }

    /** Ends the work after its current step, and waits for that, a second at most. */
    @Override
    public void close() {
        end(USUAL_END);
    }

    /**
     * Ends the work after its current step. An interrupt of the caller does not shorten the wait, and is preserved. A step that ends its
     * own worker does not wait.
     *
     * @param most how long to wait for the end
     * @return whether the work has ended; also true if it was never started
     */
    public boolean end(Duration most) {
        closing = true;
        job.hurry();
        if (job.isCurrent()) {
            return false;
        }
        boolean interrupted = false;
        long end = System.nanoTime() + most.toNanos();
        for (long left = most.toNanos(); left > 0 && job.isAlive(); left = end - System.nanoTime()) {
            try {
                job.join(left);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        return !job.isAlive();
    }

    /** Runs the next step, or once the work is to end, the last. */
    private long turn() {
        long pause = closing ? 0 : attempt(step);
        if (!closing) {
            return Math.max(0, pause);
        }
        attempt(() -> {
            last.run();
            return 0;
        });
        return Hands.DONE;
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
