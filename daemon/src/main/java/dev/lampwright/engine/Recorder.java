package dev.lampwright.engine;

import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusLines;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes every status that frames were made from to a file, as {@link StatusLines}, on a thread of its own. If the file cannot be
 * written to, that is said once and the rest goes on.
 */
public final class Recorder implements StatusWatch, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);
    private static final long WRITE_EVERY_MS = 200;

    private final Path file;
    private final BufferedWriter writer;
    private final StatusRing ring = new StatusRing();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "recorder");
    private PrinterStatus before = PrinterStatus.nothingHeard();
    private long startNanos;
    private boolean broken;

    /**
     * Opens the file.
     *
     * @param file where to write; what it held is gone
     * @throws IOException if it cannot be written to; the text says which and why
     */
    public Recorder(Path file) throws IOException {
        this.file = file;
        try {
            writer = Files.newBufferedWriter(file);
        } catch (IOException e) {
            throw new IOException(
                    file + ": cannot be written to (" + e.getClass().getSimpleName()
                            + "); give a file in a folder that you may write to",
                    e);
        }
        thread.setDaemon(true);
    }

    @Override
    public void start(long firstFrameNanos) {
        startNanos = firstFrameNanos;
        thread.start();
    }

    @Override
    public void shown(long tick, PrinterStatus status) {
        ring.put(tick, status, 0);
    }

    @Override
    public void leftOut(long tick, long count) {
        ring.put(tick, PrinterStatus.nothingHeard(), count);
    }

    /** Writes what is left and closes the file. */
    @Override
    public void close() {
        closing.countDown();
        try {
            thread.join(TimeUnit.SECONDS.toMillis(1));
            writer.close();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            tell(e);
        }
    }

    private void run() {
        boolean last = false;
        while (!last) {
            last = closed();
            ring.drain(this::write);
            flush();
        }
        if (ring.lost() > 0) {
            LOG.warn("{}: {} changes came too quickly and are not in the recording", file, ring.lost());
        }
    }

    private boolean closed() {
        try {
            return closing.await(WRITE_EVERY_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            return true;
        }
    }

    private void write(long tick, PrinterStatus status, long leftOut) {
        if (leftOut > 0) {
            write(StatusLines.leftOut(tick, leftOut));
            return;
        }
        StatusLines.between(before, status, tick, startNanos).forEach(this::write);
        before = status;
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
            LOG.warn("{}: the recording cannot go on: {}", file, e.getMessage());
        }
    }
}
