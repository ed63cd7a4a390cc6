package dev.lampwright.upkeep;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Delayed;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.LongSupplier;

/**
 * A few threads, {@code crew}, that do the repeated work of many rigs. Each step takes them a fraction of a millisecond, so a thread for each job would
 * only take memory. A step that is stuck keeps its thread for itself: if work that is due waits, and for {@link #STUCK_MILLIS} no step has ended, the
 * thread {@code crew watch} adds one. So a stuck step delays all others for that long, once. Threads that are no longer needed end.
 * For any threads.
 */
public final class Crew implements Hands, AutoCloseable {
    /** How many threads there always are. */
    static final int USUAL = 2;

    /** How long work that is due waits while all threads are busy and none gets anything done. */
    static final long STUCK_MILLIS = 100;

    private static final long LOOK_EVERY_MILLIS = 50;
    private static final long CALM_LOOKS = TimeUnit.SECONDS.toMillis(5) / LOOK_EVERY_MILLIS;

    private final ThreadGroup group = Thread.currentThread().getThreadGroup();
    private final AtomicInteger count = new AtomicInteger();
    private final ScheduledThreadPoolExecutor threads = new ScheduledThreadPoolExecutor(USUAL, this::thread);
    private final Thread watch;
    private long doneBefore;
    private long stuckMillis;
    private long calmLooks;

    /** Creates a crew. Only the thread that watches starts at once, the others with their first work. */
    public Crew() {
        threads.setRemoveOnCancelPolicy(true);
        threads.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        threads.setRejectedExecutionHandler(new ThreadPoolExecutor.DiscardPolicy());
        watch = RigName.make("", () -> new Thread(group, this::watch, "crew watch"));
        watch.setDaemon(true);
        watch.start();
    }

    /** Called on a thread that hands in work, from which the new thread must inherit nothing. */
    private Thread thread(Runnable work) {
        Thread made = RigName.make("", () -> new Thread(group, work, "crew " + count.incrementAndGet()));
        made.setDaemon(true);
        return made;
    }

    private void watch() {
        try {
            while (true) {
                TimeUnit.MILLISECONDS.sleep(LOOK_EVERY_MILLIS);
                look();
            }
        } catch (InterruptedException e) {
            // Closing does that.
        }
    }

    private void look() {
        int size = threads.getCorePoolSize();
        int busy = threads.getActiveCount();
        long done = threads.getCompletedTaskCount();
        boolean isStuck = busy >= size && done == doneBefore && isWorkDue();
        doneBefore = done;
        stuckMillis = isStuck ? stuckMillis + LOOK_EVERY_MILLIS : 0;
        calmLooks = busy >= size - 1 ? 0 : calmLooks + 1;
        if (stuckMillis >= STUCK_MILLIS) {
            threads.setCorePoolSize(size + 1);
            stuckMillis = 0;
        } else if (size > USUAL && calmLooks > CALM_LOOKS) {
            threads.setCorePoolSize(size - 1);
            calmLooks = 0;
        }
    }

    private boolean isWorkDue() {
        return threads.getQueue().peek() instanceof Delayed next && next.getDelay(TimeUnit.NANOSECONDS) <= 0;
    }

    /** Does no more work, and ends its threads without waiting for them. */
    @Override
    public void close() {
        watch.interrupt();
        threads.shutdown();
    }

    /** How many threads it has, without the one that watches. */
    int size() {
        return threads.getPoolSize();
    }

    @Override
    public Job take(String name, LongSupplier step, Runnable interrupted) {
        return new Shared(step);
    }

    /** A job of the crew. */
    private final class Shared implements Job {
        private final LongSupplier step;
        private final String rig = RigName.current();
        private final CountDownLatch done = new CountDownLatch(1);
        private ScheduledFuture<?> planned;
        private long plans;
        private boolean started;
        private boolean hurried;
        private volatile Thread current;

        Shared(LongSupplier step) {
            this.step = step;
        }

        @Override
        public synchronized void start() {
            started = true;
            plan(0);
        }

        private void plan(long nanos) {
            plans++;
            long plan = plans;
            planned = threads.schedule(() -> run(plan), nanos, TimeUnit.NANOSECONDS);
        }

        @Override
        public synchronized void hurry() {
            if (!started || done.getCount() == 0) {
                return;
            }
            if (current != null) {
                hurried = true;
            } else if (planned == null || planned.getDelay(TimeUnit.NANOSECONDS) > 0) {
                if (planned != null) {
                    planned.cancel(false);
                }
                plan(0);
            }
        }

        private void run(long plan) {
            if (begin(plan)) {
                RigName.during(rig, this::doStep);
            }
        }

        /** A step that fails is the last one, and its failure is reported, as with a thread of its own. */
        private void doStep() {
            long pause = DONE;
            try {
                pause = step.getAsLong();
            } catch (RuntimeException | Error e) {
                Thread thread = Thread.currentThread();
                thread.getUncaughtExceptionHandler().uncaughtException(thread, e);
            }
            end(pause);
        }

        /** False if another step has been planned instead, because this one could not be called off any more. */
        private synchronized boolean begin(long plan) {
            if (plan != plans || current != null || done.getCount() == 0) {
                return false;
            }
            current = Thread.currentThread();
            planned = null;
            return true;
        }

        private synchronized void end(long pause) {
            current = null;
            if (pause == DONE) {
                done.countDown();
            } else if (hurried) {
                plan(0);
            } else if (pause != UNTIL_HURRIED) {
                plan(pause);
            }
            hurried = false;
        }

        @Override
        public synchronized boolean isAlive() {
            return started && done.getCount() > 0;
        }

        @Override
        public boolean isCurrent() {
            return Thread.currentThread() == current;
        }

        @Override
        public void join(long nanos) throws InterruptedException {
            if (isAlive()) {
                done.await(nanos, TimeUnit.NANOSECONDS);
            }
        }
    }
}
