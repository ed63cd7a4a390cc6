package dev.lampwright.service;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the service manager informed, on the thread {@code service}: ready when the first frame has been made, a status line when it
 * changes, and a sign of life only while frames go on. Where there is no service manager nothing is done and nothing loaded.
 */
public final class ServiceWatch implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ServiceWatch.class);
    private static final long FIRST_FRAME_LOOK_MS = 10;
    private static final long LOOK_MS = 1000;
    private static final long STATUS_MS = 5000;

    private final Optional<Notifier> manager;
    private final LongSupplier frames;
    private final Supplier<String> words;
    private final long lookMillis;
    private final CountDownLatch closed = new CountDownLatch(1);
    private final Thread thread = new Thread(this::watch, "service");

    ServiceWatch(Optional<Notifier> manager, long watchdogMicros, LongSupplier frames, Supplier<String> words) {
        this.manager = manager;
        this.frames = frames;
        this.words = words;
        lookMillis = watchdogMicros == 0 ? LOOK_MS : Math.max(1, Math.min(LOOK_MS, watchdogMicros / 4000));
    }

    /**
     * Finds the service manager as sd_notify(3) and sd_watchdog_enabled(3) say.
     *
     * @param environment of the process
     * @param frames how many frames have been made so far; stands still when something else is wrong that a new start would mend
     * @param words a line on how the daemon does
     * @return what to start; does nothing where there is no service manager
     */
    public static ServiceWatch of(Map<String, String> environment, LongSupplier frames, Supplier<String> words) {
        return new ServiceWatch(manager(environment), watchdogMicros(environment), frames, words);
    }

    private static Optional<Notifier> manager(Map<String, String> environment) {
        String name = environment.getOrDefault("NOTIFY_SOCKET", "");
        if (name.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Notifier(UnixDatagrams.to(name)));
        } catch (IOException e) {
            LOG.warn("the service manager is not told how the service does: {}", e.getMessage());
            return Optional.empty();
        }
    }

    /** The time within which the manager wants a sign of life, in µs; 0 if it wants none, or none of this process. */
    static long watchdogMicros(Map<String, String> environment) {
        String own = Long.toString(ProcessHandle.current().pid());
        if (!environment.getOrDefault("WATCHDOG_PID", own).equals(own)) {
            return 0;
        }
        try {
            return Math.max(0, Long.parseLong(environment.getOrDefault("WATCHDOG_USEC", "0")));
        } catch (NumberFormatException e) {
            return 0;
        }
    }

    /** Begins to watch. */
    public void start() {
        if (manager.isPresent()) {
            thread.setDaemon(true);
            thread.start();
        }
    }

    /** Says that the configuration is being read again. */
    public void reloading() {
        manager.ifPresent(Notifier::reloading);
    }

    /** Says that the configuration has been read again, whether it was taken or refused. */
    public void reloaded() {
        manager.ifPresent(Notifier::ready);
    }

    /** Says that the daemon ends, and watches no more. */
    @Override
    public void close() {
        if (closed.getCount() == 0) {
            return;
        }
        closed.countDown();
        manager.ifPresent(Notifier::stopping);
        try {
            thread.join(LOOK_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        manager.ifPresent(Notifier::close);
    }

    private void watch() {
        Notifier to = manager.orElseThrow();
        while (frames.getAsLong() == 0) {
            if (isClosedAfter(FIRST_FRAME_LOOK_MS)) {
                return;
            }
        }
        to.ready();
        keepTold(to);
    }

    private void keepTold(Notifier to) {
        long seen = 0;
        String told = "";
        long toldAt = System.nanoTime() - TimeUnit.MILLISECONDS.toNanos(STATUS_MS);
        do {
            long made = frames.getAsLong();
            if (made != seen) {
                to.alive();
                seen = made;
            }
            String now = words.get();
            if (!now.equals(told) && System.nanoTime() - toldAt >= TimeUnit.MILLISECONDS.toNanos(STATUS_MS)) {
                to.status(now);
                told = now;
                toldAt = System.nanoTime();
            }
        } while (!isClosedAfter(lookMillis));
    }

    private boolean isClosedAfter(long millis) {
        try {
            return closed.await(millis, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }
}
