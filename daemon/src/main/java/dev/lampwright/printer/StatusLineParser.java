package dev.lampwright.printer;

import dev.lampwright.payload.JsonLine;
import dev.lampwright.payload.Plausible;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.Value;
import dev.lampwright.printer.StatusLines.BadLineException;
import dev.lampwright.printer.StatusLines.Entry;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** Reads one of the {@link StatusLines}, strictly: anything unknown is a mistake. */
final class StatusLineParser {
    private static final List<String> KEYS = List.of(
            StatusLines.TICK,
            StatusLines.AT,
            StatusLines.PRINTER,
            StatusLines.STATE,
            StatusLines.READINGS,
            StatusLines.OWN_READINGS,
            StatusLines.EVENTS,
            StatusLines.FAULT_TEXT,
            StatusLines.LEFT_OUT);
    private static final BigDecimal MOST_SECONDS = BigDecimal.valueOf(1_000_000_000);

    private final JsonLine line;

    /**
     * Parses a line.
     *
     * @param line JSON
     * @throws BadLineException if it is not a JSON object, or has an unknown key
     */
    StatusLineParser(String line) throws BadLineException {
        try {
            this.line = JsonLine.read(line);
        } catch (UnreadableException e) {
            throw new BadLineException(
                    e.getMessage() + "; write for instance {\"at_s\": 1.5, \"state\": \"printing\"}");
        }
        requireKnownKeys();
    }

    /**
     * What the line says.
     *
     * @param before what is known up to now
     * @return the status of one printer with the line in it
     * @throws BadLineException if it is not valid
     */
    Entry entry(Statuses before) throws BadLineException {
        String printer = line.has(StatusLines.PRINTER) ? text(StatusLines.PRINTER) : Statuses.UNNAMED;
        return line.has(StatusLines.LEFT_OUT) ? gap(before.of(printer)) : message(before.of(printer), printer);
    }

    private Entry gap(PrinterStatus before) throws BadLineException {
        if (line.keys().size() > 2 || !line.has(StatusLines.TICK)) {
            throw new BadLineException("has left_out, which goes with tick alone; write for instance"
                    + " {\"tick\": 131, \"left_out\": 2}");
        }
        return new Entry(Optional.of(count(StatusLines.TICK)), 0, before, count(StatusLines.LEFT_OUT));
    }

    private Entry message(PrinterStatus before, String printer) throws BadLineException {
        if (!line.has(StatusLines.AT)) {
            throw new BadLineException("has no time; write for instance \"at_s\": 1.5");
        }
        long at = nanos(line, StatusLines.AT);
        PrinterStatus status = before.heardAt(at);
        if (line.has(StatusLines.STATE)) {
            status = status.withState(state(), at);
        }
        JsonLine readings = object(StatusLines.READINGS, "{\"bed.actual_C\": 22.4}");
        for (String key : readings.keys()) {
            Quantity quantity = quantity(key);
            status = status.withReading(quantity, reading(readings, quantity), at);
        }
        JsonLine own = object(StatusLines.OWN_READINGS, "{\"print_speed\": 120}");
        for (String name : own.keys()) {
            status = status.withOwn(name, own(own, name), at);
        }
        JsonLine events = object(StatusLines.EVENTS, "{\"camera\": 10}");
        for (String event : events.keys()) {
            status = status.withEvent(event, at + nanos(events, event), at);
        }
        if (line.has(StatusLines.FAULT_TEXT)) {
            status = status.withFaultText(text(StatusLines.FAULT_TEXT), at);
        }
        Optional<Long> tick = line.has(StatusLines.TICK) ? Optional.of(count(StatusLines.TICK)) : Optional.empty();
        return new Entry(tick, at, status, 0, printer);
    }

    private void requireKnownKeys() throws BadLineException {
        for (String key : line.keys()) {
            if (!KEYS.contains(key)) {
                throw unknown("\"" + key + "\"", KEYS);
            }
        }
    }

    private String text(String key) throws BadLineException {
        if (value(line, key) instanceof Value.Text text) {
            return text.text();
        }
        throw wrong(line, key, "write text, for instance \"door open\"");
    }

    private long count(String key) throws BadLineException {
        OptionalLong count = value(line, key) instanceof Value.Numeric number ? number.whole() : OptionalLong.empty();
        if (count.isEmpty() || count.getAsLong() < 0) {
            throw wrong(line, key, "write a whole number, 0 or more");
        }
        return count.getAsLong();
    }

    private static long nanos(JsonLine from, String key) throws BadLineException {
        if (value(from, key) instanceof Value.Numeric number
                && number.exact().abs().compareTo(MOST_SECONDS) <= 0) {
            return number.exact().movePointRight(StatusLines.NANO_DIGITS).longValue();
        }
        throw wrong(from, key, "write seconds, for instance 1.5");
    }

    private JsonLine object(String key, String example) throws BadLineException {
        return line.object(key).orElseThrow(() -> wrong(line, key, "write for instance " + example));
    }

    private PrinterState state() throws BadLineException {
        Value word = value(line, StatusLines.STATE);
        return Arrays.stream(PrinterState.values())
                .filter(state -> word.equals(new Value.Text(state.word())))
                .findFirst()
                .orElseThrow(() -> unknown(
                        "the state " + line.json(StatusLines.STATE),
                        Arrays.stream(PrinterState.values())
                                .map(PrinterState::word)
                                .toList()));
    }

    private static Quantity quantity(String key) throws BadLineException {
        return Arrays.stream(Quantity.values())
                .filter(quantity -> quantity.key().equals(key))
                .findFirst()
                .orElseThrow(() -> unknown(
                        "the reading \"" + key + "\"",
                        Arrays.stream(Quantity.values()).map(Quantity::key).toList()));
    }

    private static double reading(JsonLine readings, Quantity quantity) throws BadLineException {
        Value value = value(readings, quantity.key());
        if (value instanceof Value.None) {
            return Double.NaN;
        }
        if (!(value instanceof Value.Numeric number)) {
            throw wrong(readings, quantity.key(), "write a number, or null for unknown");
        }
        try {
            return Plausible.value(quantity, number.value());
        } catch (UnreadableException e) {
            throw new BadLineException(
                    "has " + readings.json(quantity.key()) + " for " + quantity.key() + ", and " + e.getMessage());
        }
    }

    private static double own(JsonLine readings, String name) throws BadLineException {
        Value value = value(readings, name);
        if (value instanceof Value.None) {
            return Double.NaN;
        }
        if (value instanceof Value.Numeric number && Double.isFinite(number.value())) {
            return number.value();
        }
        throw wrong(readings, name, "write a number, or null for unknown");
    }

    /** The value of a key that exists. */
    private static Value value(JsonLine from, String key) {
        return from.value(key).orElseThrow();
    }

    private static BadLineException wrong(JsonLine from, String key, String right) {
        return new BadLineException("has " + from.json(key) + " for " + key + "; " + right);
    }

    private static BadLineException unknown(String what, List<String> known) {
        return new BadLineException("has " + what + ", which is not known; there are " + String.join(", ", known));
    }
}
