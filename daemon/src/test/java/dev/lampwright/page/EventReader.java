package dev.lampwright.page;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Reads a stream of events as browsers do. Source: WHATWG HTML Standard, 9.2.5 "Parsing an event stream" and 9.2.6 "Interpreting an event
 * stream", step by step (from memory).
 */
final class EventReader {
    private static final Pattern LINE_END = Pattern.compile("\r\n|\r|\n");
    private static final Pattern DIGITS = Pattern.compile("[0-9]+");

    private final List<Event> events = new ArrayList<>();
    private final StringBuilder data = new StringBuilder();
    private String type = "";
    private String lastId = "";
    private long retryMillis = -1;

    /** An event that a browser would dispatch. */
    record Event(String type, String data, String lastId) {}

    /** Reads a whole stream; an event without a final empty line is dropped, as the standard says. */
    static EventReader of(byte[] stream) {
        EventReader reader = new EventReader();
        String text = new String(stream, StandardCharsets.UTF_8);
        String[] lines = LINE_END.split(text.startsWith("\uFEFF") ? text.substring(1) : text, -1);
        for (int i = 0; i < lines.length - 1; i++) {
            reader.line(lines[i]);
        }
        return reader;
    }

    /** Reads a line and returns the events that it completes. */
    void line(String line) {
        if (line.isEmpty()) {
            dispatch();
        } else if (!line.startsWith(":")) {
            int colon = line.indexOf(':');
            String value = colon < 0 ? "" : line.substring(colon + 1);
            field(colon < 0 ? line : line.substring(0, colon), value.startsWith(" ") ? value.substring(1) : value);
        }
    }

    private void field(String name, String value) {
        switch (name) {
            case "event" -> type = value;
            case "data" -> data.append(value).append('\n');
            case "id" -> lastId = value.indexOf('\0') < 0 ? value : lastId;
            case "retry" -> retryMillis = DIGITS.matcher(value).matches() ? Long.parseLong(value) : retryMillis;
            default -> {
                // The field is ignored.
            }
        }
    }

    private void dispatch() {
        if (data.length() > 0) {
            events.add(new Event(type.isEmpty() ? "message" : type, data.substring(0, data.length() - 1), lastId));
        }
        data.setLength(0);
        type = "";
    }

    List<Event> events() {
        return List.copyOf(events);
    }

    /** How long to wait before reconnecting, in ms; −1 if not given. */
    long retryMillis() {
        return retryMillis;
    }
}
