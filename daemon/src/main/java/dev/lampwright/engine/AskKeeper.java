package dev.lampwright.engine;

import dev.lampwright.desk.Desk;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.FileFailure;
import dev.lampwright.file.RegularFile;
import dev.lampwright.upkeep.Trouble;
import dev.lampwright.upkeep.Worker;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps what people asked for in a file, for the next run, as {@code desk.keep} says: on a thread of its own, {@code keeper}, so that a
 * slow disk holds up nothing. A change is written within a second, and one that soon follows another within ten, for the sake of
 * memory cards; the last one is written at the end. A file that cannot be written is told once in the log and tried again.
 */
final class AskKeeper implements AutoCloseable {
    /** No file that this wrote is longer. */
    static final long MOST_BYTES = 1 << 20;

    private static final Logger LOG = LoggerFactory.getLogger(AskKeeper.class);
    private static final Duration LOOK_EVERY = Duration.ofSeconds(1);
    private static final long SHORTEST_PAUSE_NANOS = TimeUnit.SECONDS.toNanos(10);
    private static final Duration LAST_WRITE = Duration.ofMillis(500);
    private static final String SET_ASIDE = ".damaged";

    private final Path file;
    private final Desk desk;
    private final Trouble trouble = new Trouble(LOG);
    private Optional<Worker> worker = Optional.empty();
    private long written;
    private long pauseUntilNanos;

    /**
     * Makes a keeper that keeps nothing yet.
     *
     * @param file where to keep it; its folder need not exist
     * @param desk where people ask
     */
    AskKeeper(Path file, Desk desk) {
        this.file = file;
        this.desk = desk;
        pauseUntilNanos = System.nanoTime();
    }

    /** Has the desk take up what an earlier run kept. What is no such file is set aside, and told in one line. */
    void restore() {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try {
            RegularFile.require(file);
            if (Files.size(file) > MOST_BYTES) {
                throw new IllegalArgumentException("is longer than " + MOST_BYTES + " bytes");
            }
            desk.restore(Files.readString(file));
        } catch (IllegalArgumentException e) {
            setAside(e.getMessage());
        } catch (IOException e) {
            setAside(FileFailure.whyNotRead(file, e));
        }
    }

    private void setAside(String why) {
        Path aside = file.resolveSibling(file.getFileName() + SET_ASIDE);
        try {
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            LOG.warn("{}: {}; what was asked for before is forgotten, and the file is now {}", file, why, aside);
        } catch (IOException e) {
            LOG.warn(
                    "{}: {}; what was asked for before is forgotten, and the file cannot be moved away; remove it",
                    file,
                    why);
        }
    }

    /**
     * Keeps what is asked for from now on, or no longer; then nothing stays in the file that another run could take up.
     *
     * @param keep what the configuration says
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

    /** Has what is new written, without waiting for it, and keeps nothing from then on. */
    synchronized void end() {
        worker.ifPresent(running -> running.end(Duration.ZERO));
    }

    /** Waits until what is new is written, half a second at most. */
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
                    "{}: cannot be removed: {}; remove it, or a later run with desk.keep takes it up", file, reason(e));
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
        pauseUntilNanos = System.nanoTime() + SHORTEST_PAUSE_NANOS;
        try {
            AtomicFile.makeFolder(file.toAbsolutePath().getParent());
            AtomicFile.replace(file, desk.kept());
            written = changes;
            trouble.ends(file + ": what is asked for is kept again");
        } catch (IOException e) {
            String why = e.getMessage().replaceFirst("(?s); .*", "");
            trouble.begins(
                    why
                            + "; let this user write there, or set STATE_DIRECTORY; until then what is asked for is not kept",
                    System.nanoTime());
        }
    }

    private static String reason(IOException e) {
        return e instanceof FileSystemException failure && failure.getReason() != null
                ? failure.getReason()
                : String.valueOf(e.getMessage());
    }
}
