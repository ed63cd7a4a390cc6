package dev.lampwright.page;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * Events in the format of a stream. Source: WHATWG HTML Standard, section 9.2, server-sent events: fields {@code event}, {@code data},
 * {@code id} and {@code retry}, each on separate lines, in UTF-8; an empty line ends an event; a line that starts with a colon is a
 * comment.
 */
final class ServerEvent {
    /** A line without meaning, so that nothing along the way considers the stream dead. */
    static final byte[] NOTHING = bytes(":\n\n");

    private static final Pattern LINE_END = Pattern.compile("\r\n|\r|\n");

    private ServerEvent() {}

    /**
     * An event.
     *
     * @param name its type, one line
     * @param data its content; each line becomes a field
     * @return bytes to send unchanged
     */
    static byte[] of(String name, String data) {
        return bytes("event: " + name + '\n' + fields(data) + '\n');
    }

    /**
     * An event after which the stream may be resumed.
     *
     * @param name its type, one line
     * @param id what the browser sends when it reconnects; one line
     * @param data its content; each line becomes a field
     * @return bytes to send unchanged
     */
    static byte[] of(String name, String id, String data) {
        return bytes("event: " + name + "\nid: " + id + '\n' + fields(data) + '\n');
    }

    /**
     * How long a browser should wait before it reconnects.
     *
     * @param millis ms
     * @return bytes to send unchanged
     */
    static byte[] retryAfter(long millis) {
        return bytes("retry: " + millis + "\n\n");
    }

    /** Any of the standard's three line ends separates two lines. */
    private static String fields(String data) {
        if (data.indexOf('\n') < 0 && data.indexOf('\r') < 0) {
            return "data: " + data + '\n';
        }
        StringBuilder fields = new StringBuilder();
        for (String line : LINE_END.split(data, -1)) {
            fields.append("data: ").append(line).append('\n');
        }
        return fields.toString();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
