package dev.lampwright.engine;

import dev.lampwright.desk.Desk;
import dev.lampwright.desk.Report;
import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Tells how the daemon does, on the thread {@code desk}: at once when a word of it changes, and every few seconds for the numbers.
 * It also sees that the night begins and ends.
 */
final class Reporter implements AutoCloseable {
    private static final Duration LOOK_EVERY = Duration.ofMillis(200);
    private static final long TELL_EVERY_NANOS = TimeUnit.SECONDS.toNanos(5);

    private final Desk desk;
    private final Supplier<Report> reports;
    private final Consumer<Report> listener;
    private final Worker worker = new Worker("desk", LOOK_EVERY, this::look);
    private Report told;
    private long toldNanos;

    /**
     * Makes a reporter that does not run yet.
     *
     * @param desk to be looked after
     * @param reports how the daemon does now
     * @param listener told of it; must not wait
     */
    Reporter(Desk desk, Supplier<Report> reports, Consumer<Report> listener) {
        this.desk = desk;
        this.reports = reports;
        this.listener = listener;
    }

    /** Starts the thread. */
    void start() {
        worker.start();
    }

    /** Ends the thread and waits for it, a second at most. */
    @Override
    public void close() {
        worker.close();
    }

    private void look() {
        desk.look();
        Report now = reports.get();
        if (told == null || now.differsInWord(told) || System.nanoTime() - toldNanos >= TELL_EVERY_NANOS) {
            told = now;
            toldNanos = System.nanoTime();
            listener.accept(told);
        }
    }
}
