package dev.lampwright.engine;

import dev.lampwright.desk.Desk;
import dev.lampwright.desk.Report;
import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * Reports the daemon's status, as {@code desk}: at once when a word in it changes, again two seconds later, after the light has
 * followed, and every few seconds for the numbers. It also starts and ends quiet hours.
 */
final class Reporter implements AutoCloseable {
    private static final Duration LOOK_EVERY = Duration.ofMillis(200);
    private static final long TELL_EVERY_NANOS = TimeUnit.SECONDS.toNanos(5);
    /** After a change of state, most fades are finished by then. */
    private static final long LIGHT_FOLLOWS_NANOS = TimeUnit.SECONDS.toNanos(2);

    private final Desk desk;
    private final Supplier<Report> inWords;
    private final Supplier<Report> reports;
    private final Consumer<Report> listener;
    private final LongSupplier clock;
    private final Worker worker;
    private Report told;
    private long nextNanos;

    /**
     * Creates a reporter that does not run yet.
     *
     * @param desk the desk that it checks
     * @param inWords provides as much of the daemon's current status as {@link Report#differsInWord} needs, which costs less than all of it
     * @param reports provides the daemon's current status
     * @param listener receives it; must not block
     * @param clock monotonic time, in ns
     * @param hands who does the work
     */
    Reporter(
            Desk desk,
            Supplier<Report> inWords,
            Supplier<Report> reports,
            Consumer<Report> listener,
            LongSupplier clock,
            Hands hands) {
        this.desk = desk;
        this.inWords = inWords;
        this.reports = reports;
        this.listener = listener;
        this.clock = clock;
        worker = new Worker(hands, "desk", LOOK_EVERY, this::look, () -> {});
    }

    /** Starts. */
    void start() {
        worker.start();
    }

    /** Ends, and waits for that, a second at most. */
    @Override
    public void close() {
        worker.close();
    }

    /** Runs one check, as is done five times a second. */
    void look() {
        desk.look();
        long nanos = clock.getAsLong();
        boolean news = told == null || inWords.get().differsInWord(told);
        if (news || nanos - nextNanos >= 0) {
            told = reports.get();
            nextNanos = nanos + (news ? LIGHT_FOLLOWS_NANOS : TELL_EVERY_NANOS);
            listener.accept(told);
        }
    }
}
