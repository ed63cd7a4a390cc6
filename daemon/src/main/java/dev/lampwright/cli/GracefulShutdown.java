package dev.lampwright.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Lets a signal end a command cleanly: SIGTERM or Ctrl-C stops the command's work, waits for it to end, with a limit, and the process exits
 * with status 0. A second signal ends it at once.
 */
final class GracefulShutdown {
    /** The exit status of a process ended by a signal, minus the signal's number: POSIX.1-2017, Shell and Utilities, 2.8.2. */
    private static final int BY_SIGNAL = 128;

    private static final int INT = 2;
    private static final int TERM = 15;

    private final Runnable stop;
    private final Duration longest;
    private final AtomicBoolean asked = new AtomicBoolean();
    private final CountDownLatch ended = new CountDownLatch(1);

    /**
     * What a command does.
     *
     * @param <E> what it may throw
     */
    interface Work<E extends Exception> {
        void run() throws E, InterruptedException;
    }

    private GracefulShutdown(Runnable stop, Duration longest) {
        this.stop = stop;
        this.longest = longest;
    }

    /**
     * Runs work that a signal may end.
     *
     * @param <E> what the work may throw
     * @param longest how long the work may take to end; the rest is abandoned
     * @param stop makes the work end soon; called from another thread
     * @param work what to do
     * @throws E if the work does
     * @throws InterruptedException if the work is interrupted
     */
    static <E extends Exception> void of(Duration longest, Runnable stop, Work<E> work) throws E, InterruptedException {
        GracefulShutdown end = new GracefulShutdown(stop, longest);
        end.listen();
        try {
            work.run();
        } finally {
            end.ended.countDown();
        }
    }

    /** If the runtime reserves signals for itself, it shuts down at the first and ignores a second. */
    private void listen() {
        boolean heard = ProcessSignal.on("INT", () -> onSignal(INT)) && ProcessSignal.on("TERM", () -> onSignal(TERM));
        if (!heard) {
            Runtime.getRuntime().addShutdownHook(new Thread(() -> onSignal(TERM), "end"));
        }
    }

    private void onSignal(int number) {
        if (ended.getCount() == 0) {
            return;
        }
        if (asked.getAndSet(true)) {
            Runtime.getRuntime().halt(BY_SIGNAL + number);
        }
        stop.run();
        try {
            ended.await(longest.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(0);
    }
}
