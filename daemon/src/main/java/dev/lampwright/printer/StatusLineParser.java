package dev.lampwright.printer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import dev.lampwright.payload.Plausible;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.printer.StatusLines.Entry;
import dev.lampwright.printer.StatusLines.LineException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads one of the {@link StatusLines}, strictly: what is not understood is a mistake. */
final class StatusLineParser {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private static final List<String> KEYS = List.of(
            StatusLines.TICK,
            StatusLines.AT,
            StatusLines.STATE,
            StatusLines.READINGS,
            StatusLines.EVENTS,
            StatusLines.FAULT_TEXT,
            StatusLines.LEFT_OUT);
    private static final BigDecimal MOST_SECONDS = BigDecimal.valueOf(1_000_000_000);

    private final JsonNode node;

    /**
     * Parses a line.
     *
     * @param line JSON
     * @throws LineException if it is no JSON object, or has a key that is not known
     */
    StatusLineParser(String line) throws LineException {
        node = parsed(line);
        requireKnownKeys();
    }

    /**
     * What the line says.
     *
     * @param before the status up to now
     * @return the status with the line in it
     * @throws LineException if it makes no sense
     */
    Entry entry(PrinterStatus before) throws LineException {
        return node.has(StatusLines.LEFT_OUT) ? gap(before) : message(before);
    }

    private Entry gap(PrinterStatus before) throws LineException {
        if (node.size() > 2 || !node.has(StatusLines.TICK)) {
            throw new LineException("has left_out, which goes with tick alone; write for instance"
                    + " {\"tick\": 131, \"left_out\": 2}");
        }
        return new Entry(Optional.of(count(StatusLines.TICK)), 0, before, count(StatusLines.LEFT_OUT));
    }

    private Entry message(PrinterStatus before) throws LineException {
        long at = nanos(StatusLines.AT, node.get(StatusLines.AT));
        PrinterStatus status = before.heardAt(at);
        if (node.has(StatusLines.STATE)) {
            status = status.withState(state(node.get(StatusLines.STATE)), at);
        }
        for (Map.Entry<String, JsonNode> reading : properties(StatusLines.READINGS, "{\"bed.actual_C\": 22.4}")) {
            Quantity quantity = quantity(reading.getKey());
            status = status.withReading(quantity, value(quantity, reading.getValue()), at);
        }
        for (Map.Entry<String, JsonNode> event : properties(StatusLines.EVENTS, "{\"camera\": 10}")) {
            status = status.withEvent(event.getKey(), at + nanos(event.getKey(), event.getValue()), at);
        }
        if (node.has(StatusLines.FAULT_TEXT)) {
            status = status.withFaultText(text(StatusLines.FAULT_TEXT), at);
        }
        Optional<Long> tick = node.has(StatusLines.TICK) ? Optional.of(count(StatusLines.TICK)) : Optional.empty();
        return new Entry(tick, at, status, 0);
    }

    private String text(String key) throws LineException {
        JsonNode text = node.get(key);
        if (!text.isTextual()) {
            throw new LineException("has " + text + " for " + key + "; write text, for instance \"door open\"");
        }
        return text.textValue();
    }

    private static JsonNode parsed(String line) throws LineException {
        try {
            JsonNode node = MAPPER.readTree(line);
            if (node.isObject()) {
                return node;
            }
        } catch (JsonProcessingException e) {
            String why = e.getOriginalMessage().replaceAll("\\s+", " ");
            throw new LineException("is not one JSON object: " + why + "; " + example());
        }
        throw new LineException("is no JSON object; " + example());
    }

    private static String example() {
        return "write for instance {\"at_s\": 1.5, \"state\": \"printing\"}";
    }

    private void requireKnownKeys() throws LineException {
        List<String> unknown = new ArrayList<>();
        node.fieldNames().forEachRemaining(unknown::add);
        unknown.removeAll(KEYS);
        if (!unknown.isEmpty()) {
            throw new LineException(
                    "has \"" + unknown.get(0) + "\", which is not known; there are " + String.join(", ", KEYS));
        }
    }

    private long count(String key) throws LineException {
        JsonNode count = node.get(key);
        if (!count.canConvertToLong() || !count.isIntegralNumber() || count.longValue() < 0) {
            throw new LineException("has " + count + " for " + key + "; write a whole number, 0 or more");
        }
        return count.longValue();
    }

    private static long nanos(String name, JsonNode seconds) throws LineException {
        if (seconds == null) {
            throw new LineException("says not when; write for instance \"at_s\": 1.5");
        }
        if (!seconds.isNumber() || seconds.decimalValue().abs().compareTo(MOST_SECONDS) > 0) {
            throw new LineException("has " + seconds + " for " + name + "; write seconds, for instance 1.5");
        }
        return seconds.decimalValue().movePointRight(StatusLines.NANO_DIGITS).longValue();
    }

    private Set<Map.Entry<String, JsonNode>> properties(String key, String example) throws LineException {
        JsonNode object = node.has(key) ? node.get(key) : JsonNodeFactory.instance.objectNode();
        if (!object.isObject()) {
            throw new LineException("has " + object + " for " + key + "; write for instance " + example);
        }
        return object.properties();
    }

    private static PrinterState state(JsonNode word) throws LineException {
        return Arrays.stream(PrinterState.values())
                .filter(state -> state.word().equals(word.textValue()))
                .findFirst()
                .orElseThrow(() -> unknown(
                        "the state " + word,
                        Arrays.stream(PrinterState.values())
                                .map(PrinterState::word)
                                .toList()));
    }

    private static Quantity quantity(String key) throws LineException {
        return Arrays.stream(Quantity.values())
                .filter(quantity -> quantity.key().equals(key))
                .findFirst()
                .orElseThrow(() -> unknown(
                        "the reading \"" + key + "\"",
                        Arrays.stream(Quantity.values()).map(Quantity::key).toList()));
    }

    private static LineException unknown(String what, List<String> known) {
        return new LineException("has " + what + ", which is not known; there are " + String.join(", ", known));
    }

    private static double value(Quantity quantity, JsonNode value) throws LineException {
        if (value.isNull()) {
            return Double.NaN;
        }
        if (!value.isNumber()) {
            throw new LineException(
                    "has " + value + " for " + quantity.key() + "; write a number, or null for unknown");
        }
        try {
            return Plausible.value(quantity, value.doubleValue());
        } catch (UnreadableException e) {
            throw new LineException("has " + value + " for " + quantity.key() + ", and " + e.getMessage());
        }
    }
}
