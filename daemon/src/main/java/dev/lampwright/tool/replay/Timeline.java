package dev.lampwright.tool.replay;

import dev.lampwright.desk.WishLines;
import dev.lampwright.engine.Delivery;
import dev.lampwright.engine.Early;
import dev.lampwright.file.FileFailure;
import dev.lampwright.printer.StatusLines;
import dev.lampwright.printer.StatusLines.Entry;
import dev.lampwright.printer.Statuses;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a printer reported and people asked for, and when, in chronological order: recorded or handwritten. Immutable. */
public final class Timeline {
    private static final String EXAMPLE = "job.jsonl";
    private static final double SECONDS_PER_NANO = 1e-9;

    private final String name;
    private final List<Entry> entries;
    private final List<WishLines.Entry> wishes;
    private final List<Delivery> deliveries;
    private final List<Early> early;

    private Timeline(
            String name,
            List<Entry> entries,
            List<WishLines.Entry> wishes,
            List<Delivery> deliveries,
            List<Early> early) {
        this.name = name;
        this.entries = List.copyOf(entries);
        this.wishes = List.copyOf(wishes);
        this.deliveries = List.copyOf(deliveries);
        this.early = List.copyOf(early);
    }

    /**
     * Reads a file of {@link StatusLines}; lines with nothing in them are skipped.
     *
     * @param file its path
     * @return its content
     * @throws IOException if it cannot be read, or a line is not valid; the message says which and what would be valid
     */
    public static Timeline read(Path file) throws IOException {
        return read(lines(file), file.toString());
    }

    private static List<String> lines(Path file) throws IOException {
        try {
            return Files.readAllLines(file);
        } catch (NoSuchFileException e) {
            throw new IOException(file + ": there is no such file; give one that run --record has written", e);
        } catch (CharacterCodingException e) {
            throw new IOException(file + ": is not UTF-8 text; give a file of JSON lines", e);
        } catch (IOException e) {
            throw new IOException(
                    file + ": " + FileFailure.whyNotRead(file, e) + "; give a file of JSON lines that you may read", e);
        }
    }

    /**
     * A whole invented job, handwritten.
     *
     * @return about 40 s of it
     */
    public static Timeline example() {
        try (InputStream in = Timeline.class.getResourceAsStream(EXAMPLE)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return read(text.lines().toList(), EXAMPLE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Builds a timeline.
     *
     * @param name its name in messages
     * @param entries in chronological order
     * @return the timeline
     */
    static Timeline of(String name, List<Entry> entries) {
        return new Timeline(name, entries, List.of(), List.of(), List.of());
    }

    /**
     * Reads lines.
     *
     * @param lines JSON
     * @param name their name in messages
     * @return their content
     * @throws IOException if one is not valid
     */
    static Timeline read(List<String> lines, String name) throws IOException {
        List<Entry> entries = new ArrayList<>();
        List<WishLines.Entry> wishes = new ArrayList<>();
        List<Delivery> deliveries = new ArrayList<>();
        List<Early> early = new ArrayList<>();
        Order order = new Order();
        Statuses statuses = Statuses.NOTHING_HEARD;
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).isBlank()) {
                continue;
            }
            try {
                Optional<WishLines.Entry> asked = WishLines.read(lines.get(i));
                if (asked.isPresent()) {
                    order.require(asked.get().tick());
                    wishes.add(asked.get());
                    continue;
                }
                Optional<Delivery> delivery = Delivery.read(lines.get(i));
                if (delivery.isPresent()) {
                    order.require(delivery.get().tick());
                    deliveries.add(delivery.get());
                    continue;
                }
                Optional<Early> hurried = Early.read(lines.get(i));
                if (hurried.isPresent()) {
                    order.require(hurried.get().tick());
                    early.add(hurried.get());
                    continue;
                }
                Entry entry = StatusLines.read(lines.get(i), statuses);
                order.require(entry);
                statuses = statuses.with(entry.printer(), entry.status());
                entries.add(entry);
            } catch (StatusLines.BadLineException | OrderException | IllegalArgumentException e) {
                throw new IOException(name + ":" + (i + 1) + ": " + e.getMessage(), e);
            }
        }
        return new Timeline(name, entries, wishes, deliveries, early);
    }

    /** A line after one with a later time. */
    private static final class OrderException extends Exception {
        private static final long serialVersionUID = 1L;

        OrderException(String what) {
            super(what);
        }
    }

    /** Ensures that time does not run backwards. */
    private static final class Order {
        private long tick;
        private long nanos = Long.MIN_VALUE;

        void require(long nextTick) throws OrderException {
            require(nextTick, nanos);
        }

        void require(Entry entry) throws OrderException {
            require(entry.tick().orElse(tick), entry.leftOut() > 0 ? nanos : entry.atNanos());
        }

        private void require(long nextTick, long nextNanos) throws OrderException {
            if (nextTick < tick || nextNanos < nanos) {
                throw new OrderException("is earlier than the line above it; sort the lines by time");
            }
            tick = nextTick;
            nanos = nextNanos;
        }
    }

    /**
     * The time of the last line.
     *
     * @return s since the first frame; 0 if there is none
     */
    public double seconds() {
        return entries.stream()
                .filter(entry -> entry.leftOut() == 0)
                .mapToDouble(entry -> entry.atNanos() * SECONDS_PER_NANO)
                .reduce(0, (before, last) -> last);
    }

    /** Its name in messages. */
    String name() {
        return name;
    }

    /**
     * What was reported, and which frames were skipped.
     *
     * @return in chronological order
     */
    public List<Entry> entries() {
        return entries;
    }

    /** What happened to frames, in chronological order. */
    List<Delivery> deliveries() {
        return deliveries;
    }

    /** Which frames were made before their time on the grid, in chronological order. */
    List<Early> early() {
        return early;
    }

    /** What was asked for, in chronological order. */
    List<WishLines.Entry> wishes() {
        return wishes;
    }
}
