package dev.lampwright.tool.replay;

import dev.lampwright.desk.WishLines;
import dev.lampwright.engine.Delivery;
import dev.lampwright.engine.Early;
import dev.lampwright.file.FileFailure;
import dev.lampwright.printer.StatusLines;
import dev.lampwright.printer.StatusLines.Entry;
import dev.lampwright.printer.Statuses;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What a printer reported, one message after the other, so that a recording of days takes no more memory than one of seconds. Whatever else
 * is in a recording is skipped. For one thread.
 */
public final class StatusReel implements AutoCloseable {
    private final Lines lines;
    private Statuses statuses = Statuses.NOTHING_HEARD;
    private long atNanos = Long.MIN_VALUE;
    private int line;

    /** Gives lines. */
    private interface Lines extends AutoCloseable {
        Optional<String> next() throws IOException;

        @Override
        void close() throws IOException;
    }

    /** A line that is not valid. */
    public static final class BadLineException extends IOException {
        private static final long serialVersionUID = 1L;

        private final int line;

        private BadLineException(int line, String what) {
            super(what);
            this.line = line;
        }

        /**
         * Which line.
         *
         * @return from 1
         */
        public int line() {
            return line;
        }
    }

    private StatusReel(Lines lines) {
        this.lines = lines;
    }

    /**
     * Reads a text as {@code run --record} writes it.
     *
     * @param text lines of JSON
     * @return its messages
     */
    public static StatusReel of(String text) {
        return of(new BufferedReader(new StringReader(text)), false);
    }

    /**
     * Reads a file that {@code run --record} is writing. A last line that is not complete yet does not count.
     *
     * @param file its path
     * @return its messages
     * @throws IOException if it cannot be read; the message says why and follows the file's name
     */
    public static StatusReel of(Path file) throws IOException {
        try {
            return of(Files.newBufferedReader(file, StandardCharsets.UTF_8), true);
        } catch (IOException e) {
            throw new IOException(FileFailure.whyNotRead(file, e), e);
        }
    }

    private static StatusReel of(BufferedReader reader, boolean grows) {
        return new StatusReel(new Lines() {
            @Override
            public Optional<String> next() throws IOException {
                String line = reader.readLine();
                return line == null || (grows && !line.isEmpty() && !line.endsWith("}"))
                        ? Optional.empty()
                        : Optional.of(line);
            }

            @Override
            public void close() throws IOException {
                reader.close();
            }
        });
    }

    /**
     * The next message.
     *
     * @return the status with it; empty at the end
     * @throws BadLineException if a line is not valid
     * @throws IOException if it cannot be read
     */
    public Optional<Entry> next() throws IOException {
        while (true) {
            Optional<String> text = lines.next();
            if (text.isEmpty()) {
                return Optional.empty();
            }
            line++;
            Optional<Entry> entry = message(text.get());
            if (entry.isPresent()) {
                return entry;
            }
        }
    }

    private Optional<Entry> message(String text) throws IOException {
        try {
            if (text.isBlank()
                    || WishLines.read(text).isPresent()
                    || Delivery.read(text).isPresent()
                    || Early.read(text).isPresent()) {
                return Optional.empty();
            }
            Entry entry = StatusLines.read(text, statuses);
            if (entry.leftOut() > 0) {
                return Optional.empty();
            }
            if (entry.atNanos() < atNanos) {
                throw new BadLineException(line, "is earlier than the line above it; sort the lines by time");
            }
            atNanos = entry.atNanos();
            statuses = statuses.with(entry.printer(), entry.status());
            return Optional.of(entry);
        } catch (StatusLines.BadLineException | IllegalArgumentException e) {
            throw new BadLineException(line, e.getMessage());
        }
    }

    @Override
    public void close() throws IOException {
        lines.close();
    }
}
