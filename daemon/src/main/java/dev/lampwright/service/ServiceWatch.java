package dev.lampwright.service;

import dev.lampwright.upkeep.Worker;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the service manager informed, on the thread {@code service}: ready when the first frame has been made, a status line when it
 * changes, and the watchdog's keep-alive only while frames are made. Without a service manager, does and loads nothing.
 */
public final class ServiceWatch implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ServiceWatch.class);
    private static final long FIRST_FRAME_LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(10);
    private static final long LOOK_MS = 1000;
    private static final long STATUS_NANOS = TimeUnit.SECONDS.toNanos(5);

    private final Optional<Notifier> manager;
    private final LongSupplier frames;
    private final Supplier<String> words;
    private final long lookNanos;
    private final Worker worker;
    private boolean ready;
    private long seen;
    private String told = "";
    private long toldNanos;
    private volatile boolean closed;

    ServiceWatch(Optional<Notifier> manager, long watchdogMicros, LongSupplier frames, Supplier<String> words) {
        this.manager = manager;
        this.frames = frames;
        this.words = words;
        long lookMillis = watchdogMicros == 0 ? LOOK_MS : Math.max(1, Math.min(LOOK_MS, watchdogMicros / 4000));
        lookNanos = TimeUnit.MILLISECONDS.toNanos(lookMillis);
        worker = Worker.paced("service", Duration.ofMillis(lookMillis), this::watch);
    }

    /**
     * Finds the service manager by sd_notify(3) and sd_watchdog_enabled(3).
     *
     * @param environment of the process
     * @param frames the number of frames made so far; stops also for other errors that a restart would fix
     * @param words a line with the daemon's status
     * @return the watch to start; does nothing without a service manager
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
            LOG.warn("does not report the service's status to the service manager: {}", e.getMessage());
            return Optional.empty();
        }
    }

    /** The time within which the manager expects a sign of life, in µs; 0 if it expects none, or none from this process. */
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

    /** Starts watching. */
    public void start() {
        if (manager.isPresent()) {
            worker.start();
        }
    }

    /** Reports that the configuration is being read again. */
    public void reloading() {
        manager.ifPresent(Notifier::reloading);
    }

    /** Reports that the configuration has been read again, whether accepted or rejected. */
    public void reloaded() {
        manager.ifPresent(Notifier::ready);
    }

    /** Stops watching without a report, because another watch of this process takes over. */
    public void leave() {
        if (!closed) {
            closed = true;
            worker.close();
            manager.ifPresent(Notifier::close);
        }
    }

    /** Reports that the daemon ends, and stops watching. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        manager.ifPresent(Notifier::stopping);
        worker.close();
        manager.ifPresent(Notifier::close);
    }

    /** Runs one check, and returns how long to wait until the next, in ns. */
    private long watch() {
        Notifier to = manager.orElseThrow();
        long made = frames.getAsLong();
        if (!ready && made == 0) {
            return FIRST_FRAME_LOOK_NANOS;
        }
        if (!ready) {
            ready = true;
            toldNanos = System.nanoTime() - STATUS_NANOS;
            to.ready();
        }
        if (made != seen) {
            seen = made;
            to.alive();
        }
        tellStatus(to);
        return lookNanos;
    }

    private void tellStatus(Notifier to) {
        String now = words.get();
        if (!now.equals(told) && System.nanoTime() - toldNanos >= STATUS_NANOS) {
            told = now;
            toldNanos = System.nanoTime();
            to.status(now);
        }
    }
}
