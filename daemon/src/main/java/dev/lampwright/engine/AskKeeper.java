package dev.lampwright.engine;

import dev.lampwright.desk.Desk;
import dev.lampwright.file.KeptFile;
import dev.lampwright.upkeep.Worker;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps asks in a file for the next run, as {@code desk.keep} says. Runs on its own thread, {@code keeper}, so that a slow disk delays
 * nothing. A change is written within a second, and one that soon follows another within ten, to spare memory cards; the last one is
 * written at the end. A file that cannot be written is logged once and tried again.
 */
final class AskKeeper implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(AskKeeper.class);
    private static final Duration LOOK_EVERY = Duration.ofSeconds(1);
    private static final long SHORTEST_PAUSE_NANOS = TimeUnit.SECONDS.toNanos(10);
    private static final Duration LAST_WRITE = Duration.ofMillis(500);

    private final Path file;
    private final Desk desk;
    private final KeptFile kept;
    private Optional<Worker> worker = Optional.empty();
    private long written;
    private long pauseUntilNanos;

    /**
     * Creates a keeper that keeps nothing yet.
     *
     * @param file where to keep it; its folder need not exist
     * @param desk handles asks
     */
    AskKeeper(Path file, Desk desk) {
        this.file = file;
        this.desk = desk;
        kept = new KeptFile(file, LOG, "what is asked for", "what was asked for before");
        pauseUntilNanos = System.nanoTime();
    }

    /** Passes the desk what an earlier run kept. A file with other content is renamed and reported in one line. */
    void restore() {
        kept.restore(desk::restore);
    }

    /**
     * Starts or stops keeping asks. When it stops, nothing is left in the file that another run could take up.
     *
     * @param keep whether the configuration says so
     */
    synchronized void follow(boolean keep) {
        if (keep && worker.isEmpty()) {
            Worker started = new Worker("keeper", LOOK_EVERY, this::look, this::write);
            worker = Optional.of(started);
            started.start();
        } else if (!keep) {
            close();
            forget();
        }
    }

    /** Starts writing what is new, without waiting for it, and keeps nothing from then on. */
    synchronized void end() {
        worker.ifPresent(running -> running.end(Duration.ZERO));
    }

    /** Waits until everything new is written, half a second at most. */
    @Override
    public synchronized void close() {
        worker.ifPresent(running -> running.end(LAST_WRITE));
        worker = Optional.empty();
    }

    private void forget() {
        try {
            if (Files.deleteIfExists(file)) {
                LOG.info("{}: removed, since desk.keep is off", file);
            }
        } catch (IOException e) {
            LOG.warn(
                    "{}: cannot be removed: {}; remove it, or a later run with desk.keep will use it", file, reason(e));
        }
    }

    private void look() {
        if (System.nanoTime() - pauseUntilNanos >= 0) {
            write();
        }
    }

    private void write() {
        long changes = desk.changes();
        if (changes == written) {
            return;
        }
        long now = System.nanoTime();
        pauseUntilNanos = now + SHORTEST_PAUSE_NANOS;
        if (kept.write(desk.kept(), now)) {
            written = changes;
        }
    }

    private static String reason(IOException e) {
        return e instanceof FileSystemException failure && failure.getReason() != null
                ? failure.getReason()
                : String.valueOf(e.getMessage());
    }
}
