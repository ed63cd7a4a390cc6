package dev.lampwright.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a signal end a command in good order: while this is open, SIGTERM or Ctrl-C stops the command, waits for its end, and the
 * process ends with status 0.
 */
final class GoodEnd implements AutoCloseable {
    private static final long LONGEST_END_S = 4;

    private final Runnable stop;
    private final CountDownLatch ended = new CountDownLatch(1);

    /**
     * Begins to listen for signals.
     *
     * @param stop makes the command end soon; called by another thread
     */
    GoodEnd(Runnable stop) {
        this.stop = stop;
        Runtime.getRuntime().addShutdownHook(new Thread(this::onSignal, "end"));
    }

    /** The command has ended. */
    @Override
    public void close() {
        ended.countDown();
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
