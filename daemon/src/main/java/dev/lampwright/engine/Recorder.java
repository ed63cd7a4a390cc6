package dev.lampwright.engine;

import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.WishLines;
import dev.lampwright.file.FileFailure;
import dev.lampwright.file.PrivateFile;
import dev.lampwright.printer.StatusLines;
import dev.lampwright.printer.Statuses;
import dev.lampwright.upkeep.Worker;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes every status, all wishes, each {@link Delivery} and each {@link Early} that frames were made from to a file, as
 * {@link StatusLines} and {@link WishLines}, on its own thread. If the file cannot be written, that is logged once and the rest continues.
 */
public final class Recorder implements StatusWatch, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);
    private static final Duration WRITE_EVERY = Duration.ofMillis(200);
    private static final Duration LAST_WRITE = Duration.ofSeconds(5);

    private final Path file;
    private final BufferedWriter writer;
    private final Ring ring = new Ring();
    private final Worker worker = new Worker("recorder", WRITE_EVERY, this::writeWhatIsNew, this::writeWhatIsLeft);
    private Statuses before = Statuses.NOTHING_HEARD;
    private Wishes asked = Wishes.NONE;
    private long startNanos;
    private boolean broken;

    /**
     * Creates the file, readable by this user only.
     *
     * @param file where to write: a path without a file, or a device or a pipe
     * @throws IOException if it already exists or cannot be written; the message says which, why and what to do
     */
    public Recorder(Path file) throws IOException {
        this.file = file;
        try {
            writer = PrivateFile.create(file);
        } catch (IOException e) {
            throw FileFailure.ofWriting(file, e);
        }
    }

    @Override
    public void start(long firstFrameNanos) {
        startNanos = firstFrameNanos;
        worker.start();
    }

    @Override
    public void shown(long tick, Statuses statuses) {
        ring.put(tick, statuses);
    }

    @Override
    public void asked(long tick, Wishes wishes) {
        ring.put(tick, wishes);
    }

    @Override
    public void leftOut(long tick, long count) {
        ring.put(tick, new LeftOut(count));
    }

    @Override
    public void delivered(Delivery delivery) {
        ring.put(delivery.tick(), delivery);
    }

    @Override
    public void early(Early early) {
        ring.put(early.tick(), early);
    }

    /** Writes what is left and closes the file. */
    @Override
    public void close() {
        worker.end(LAST_WRITE);
        try {
            writer.close();
        } catch (IOException e) {
            tell(e);
        }
    }

    private void writeWhatIsNew() {
        ring.drain(this::write);
        flush();
    }

    private void writeWhatIsLeft() {
        writeWhatIsNew();
        if (ring.lost() > 0) {
            LOG.warn("{}: {} changes came too quickly and are not in the recording", file, ring.lost());
        }
    }

    /** Skipped frames. */
    private record LeftOut(long count) {}

    private void write(long tick, Object thing) {
        if (thing instanceof LeftOut gap) {
            write(StatusLines.leftOut(tick, gap.count()));
        } else if (thing instanceof Delivery delivery) {
            write(delivery.line());
        } else if (thing instanceof Early early) {
            write(early.line());
        } else if (thing instanceof Wishes wishes) {
            write(tick, wishes);
        } else if (thing instanceof Statuses statuses) {
            StatusLines.between(before, statuses, tick, startNanos).forEach(this::write);
            before = statuses;
        }
    }

    private void write(long tick, Wishes wishes) {
        if (!wishes.plain() || !asked.plain()) {
            write(WishLines.line(wishes, tick, startNanos));
        }
        asked = wishes;
    }

    private void write(String line) {
        try {
            writer.write(line);
            writer.write('\n');
        } catch (IOException e) {
            tell(e);
        }
    }

    private void flush() {
        try {
            writer.flush();
        } catch (IOException e) {
            tell(e);
        }
    }

    private void tell(IOException e) {
        if (!broken) {
            broken = true;
            LOG.warn("{}: the recording has stopped: {}", file, e.getMessage());
        }
    }
}
