package dev.lampwright.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a signal end a command in good order: SIGTERM or Ctrl-C stops what the command does, waits for its end, and the process
 * ends with status 0.
 */
final class GoodEnd {
    private static final long LONGEST_END_S = 4;

    private final Runnable stop;
    private final CountDownLatch ended = new CountDownLatch(1);

    /**
     * What a command does.
     *
     * @param <E> what it may throw
     */
    interface Work<E extends Exception> {
        void run() throws E, InterruptedException;
    }

    private GoodEnd(Runnable stop) {
        this.stop = stop;
    }

    /**
     * Does something that a signal may end.
     *
     * @param <E> what the work may throw
     * @param stop makes the work end soon; called by another thread
     * @param work what to do
     * @throws E if the work does
     * @throws InterruptedException if the work is interrupted
     */
    static <E extends Exception> void of(Runnable stop, Work<E> work) throws E, InterruptedException {
        GoodEnd end = new GoodEnd(stop);
        Runtime.getRuntime().addShutdownHook(new Thread(end::onSignal, "end"));
        try {
            work.run();
        } finally {
            end.ended.countDown();
        }
    }

    private void onSignal() {
        if (ended.getCount() == 0) {
            return;
        }
        stop.run();
        try {
            if (ended.await(LONGEST_END_S, TimeUnit.SECONDS)) {
                Runtime.getRuntime().halt(0);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
