package dev.lampwright.printer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The printer's status as JSON lines, to be recorded and played back. A line is what one message changed:
 *
 * <pre>{"tick":120,"at_s":1.998764321,"state":"warming","readings":{"bed.actual_C":22.4},"events":{"camera":10}}</pre>
 *
 * <p>{@code at_s} is when the message came, {@code tick} the frame that first showed it; both count from the first frame. A line
 * written by hand may leave {@code tick} out. A reading of {@code null} is unknown; an event is given the seconds that it still lasts.
 */
public final class StatusLines {
    private static final ObjectMapper MAPPER =
            new ObjectMapper().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
    private static final int NANO_DIGITS = 9;
    private static final List<String> KEYS = List.of("tick", "at_s", "state", "readings", "events");

    private StatusLines() {}

    /**
     * What a line says.
     *
     * @param atNanos when the message came, in ns since the first frame
     * @param tick the frame that first showed it; empty if the line leaves it out
     * @param status the status with the message in it
     */
    public record Entry(long atNanos, Optional<Long> tick, PrinterStatus status) {}

    /** A line that makes no sense. The text says what is wrong with it and what would be right. */
    public static final class LineException extends Exception {
        private static final long serialVersionUID = 1L;

        LineException(String what) {
            super(what);
        }
    }

    /**
     * Writes what lies between two statuses.
     *
     * @param before the one shown up to now
     * @param after the one shown from now on
     * @param tick the frame that first shows it
     * @param startNanos the time of the first frame, on the statuses' clock
     * @return a line for each message that brought a reading, and one for the last message
     */
    public static List<String> between(PrinterStatus before, PrinterStatus after, long tick, long startNanos) {
        SortedSet<Long> times = new TreeSet<>(List.of(after.heardAtNanos()));
        for (Quantity quantity : Quantity.values()) {
            if (changed(before, after, quantity)) {
                times.add(after.reading(quantity).atNanos());
            }
        }
        return times.stream()
                .map(time -> line(before, after, time, tick, startNanos).toString())
                .toList();
    }

    /**
     * Reads a line.
     *
     * @param line JSON
     * @param before the status up to now
     * @return the status with the line in it, with times in ns since the first frame
     * @throws LineException if the line makes no sense
     */
    public static Entry read(String line, PrinterStatus before) throws LineException {
        JsonNode node = parsed(line);
        requireKnownKeys(node);
        long at = nanos(node.path("at_s"));
        PrinterStatus status = before.heardAt(at);
        if (node.has("state")) {
            status = status.withState(state(node.get("state").asText()), at);
        }
        for (Map.Entry<String, JsonNode> reading : node.path("readings").properties()) {
            status = status.withReading(quantity(reading.getKey()), value(reading), at);
        }
        for (Map.Entry<String, JsonNode> event : node.path("events").properties()) {
            status = status.withEvent(event.getKey(), at + nanos(event.getValue()), at);
        }
        Optional<Long> tick = node.has("tick") ? Optional.of(node.get("tick").asLong()) : Optional.empty();
        return new Entry(at, tick, status);
    }

    private static ObjectNode line(PrinterStatus before, PrinterStatus after, long time, long tick, long startNanos) {
        ObjectNode line = MAPPER.createObjectNode();
        line.put("tick", tick);
        line.put("at_s", BigDecimal.valueOf(time - startNanos, NANO_DIGITS));
        boolean last = time == after.heardAtNanos();
        if (last && after.state() != before.state()) {
            line.put("state", after.state().word());
        }
        for (Quantity quantity : Quantity.values()) {
            Reading reading = after.reading(quantity);
            if (changed(before, after, quantity) && reading.atNanos() == time) {
                ObjectNode readings = line.withObjectProperty("readings");
                if (reading.known()) {
                    readings.put(quantity.key(), reading.value());
                } else {
                    readings.putNull(quantity.key());
                }
            }
        }
        if (last) {
            after.eventEnds().forEach((name, end) -> {
                if (!end.equals(before.eventEnds().get(name))) {
                    line.withObjectProperty("events").put(name, BigDecimal.valueOf(end - time, NANO_DIGITS));
                }
            });
        }
        return line;
    }

    private static boolean changed(PrinterStatus before, PrinterStatus after, Quantity quantity) {
        return !after.reading(quantity).equals(before.reading(quantity));
    }

    private static JsonNode parsed(String line) throws LineException {
        try {
            JsonNode node = MAPPER.readTree(line);
            if (node.isObject()) {
                return node;
            }
        } catch (JsonProcessingException e) {
            throw new LineException("is no JSON: " + e.getOriginalMessage());
        }
        throw new LineException("is no JSON object; write for instance {\"at_s\": 1.5, \"state\": \"printing\"}");
    }

    private static void requireKnownKeys(JsonNode node) throws LineException {
        List<String> unknown = new ArrayList<>();
        node.fieldNames().forEachRemaining(unknown::add);
        unknown.removeAll(KEYS);
        if (!unknown.isEmpty()) {
            throw new LineException(
                    "has " + unknown.get(0) + ", which is not known; there are " + String.join(", ", KEYS));
        }
    }

    private static long nanos(JsonNode seconds) throws LineException {
        if (!seconds.isNumber()) {
            throw new LineException("says no time in seconds; write for instance \"at_s\": 1.5");
        }
        return seconds.decimalValue().movePointRight(NANO_DIGITS).longValue();
    }

    private static PrinterState state(String word) throws LineException {
        return Arrays.stream(PrinterState.values())
                .filter(state -> state.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new LineException("has the state \"" + word + "\"; there are "
                        + String.join(
                                " ",
                                Arrays.stream(PrinterState.values())
                                        .map(PrinterState::word)
                                        .toList())));
    }

    private static Quantity quantity(String key) throws LineException {
        return Arrays.stream(Quantity.values())
                .filter(quantity -> quantity.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new LineException("has the reading \"" + key + "\"; there are "
                        + String.join(
                                " ",
                                Arrays.stream(Quantity.values())
                                        .map(Quantity::key)
                                        .toList())));
    }

    private static double value(Map.Entry<String, JsonNode> reading) throws LineException {
        JsonNode value = reading.getValue();
        if (!value.isNumber() && !value.isNull()) {
            throw new LineException(
                    "has " + value + " for " + reading.getKey() + "; write a number, or null for unknown");
        }
        return value.isNull() ? Double.NaN : value.asDouble();
    }
}
