package dev.lampwright.testing;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** A thread with a stack of 256 KiB, half that of the service's threads. */
public final class SmallStack {
    private static final long BYTES = 256 << 10;
    private static final long LONGEST_MILLIS = 20_000;

    private SmallStack() {}

    /** Something that may throw anything. */
    @FunctionalInterface
    public interface Task {
        void run() throws Throwable;
    }

    /**
     * Runs something on such a thread.
     *
     * @param what the task
     * @return what it throws, if anything
     * @throws InterruptedException if this thread is interrupted
     */
    public static Optional<Throwable> thrownBy(Task what) throws InterruptedException {
        AtomicReference<Throwable> thrown = new AtomicReference<>();
        Thread small = new Thread(
                null,
                () -> {
                    try {
                        what.run();
                    } catch (Throwable e) {
                        thrown.set(e);
                    }
                },
                "small stack",
                BYTES);
        small.start();
        small.join(LONGEST_MILLIS);
        if (small.isAlive()) {
            throw new AssertionError("does not end");
        }
        return Optional.ofNullable(thrown.get());
    }
}
