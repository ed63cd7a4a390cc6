package dev.lampwright.upkeep;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** A job with a thread of its own. */
final class OwnThread implements Hands.Job {
    private final LongSupplier step;
    private final Runnable interrupted;
    private final Semaphore bell = new Semaphore(0);
    private final Thread thread;

    OwnThread(String name, LongSupplier step, Runnable interrupted) {
        this.step = step;
        this.interrupted = interrupted;
        thread = new Thread(this::run, RigName.thread(name));
        thread.setDaemon(true);
    }

    private void run() {
        long pause = 0;
        while (pause != Hands.DONE) {
            await(pause);
            pause = step.getAsLong();
        }
    }

    private void await(long nanos) {
        try {
            if (bell.tryAcquire(nanos, TimeUnit.NANOSECONDS)) {
                bell.drainPermits();
            }
        } catch (InterruptedException e) {
            interrupted.run();
        }
    }

    @Override
    public void start() {
        thread.start();
    }

    @Override
    public void hurry() {
        bell.release();
    }

    @Override
    public boolean isAlive() {
        return thread.isAlive();
    }

    @Override
    public boolean isCurrent() {
        return Thread.currentThread() == thread;
    }

    @Override
    public void join(long nanos) throws InterruptedException {
        TimeUnit.NANOSECONDS.timedJoin(thread, nanos);
    }
}
