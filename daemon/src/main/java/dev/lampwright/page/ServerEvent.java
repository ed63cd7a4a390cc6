package dev.lampwright.page;

import java.nio.charset.StandardCharsets;

/**
 * Events as a stream carries them. Source: WHATWG HTML Standard, section 9.2, server-sent events: fields {@code event}, {@code data},
 * {@code id} and {@code retry}, each on lines of its own, in UTF-8; an empty line ends an event; a line that begins with a colon is none.
 */
final class ServerEvent {
    /** A line that says nothing, so that nobody on the way takes the stream for dead. */
    static final byte[] NOTHING = bytes(":\n\n");

    private ServerEvent() {}

    /**
     * An event.
     *
     * @param name its type, one line
     * @param data what it says; each of its lines becomes a field
     * @return bytes to send as they are
     */
    static byte[] of(String name, String data) {
        return bytes("event: " + name + '\n' + fields(data) + '\n');
    }

    /**
     * An event that the stream may be taken up after.
     *
     * @param name its type, one line
     * @param id what the browser says when it comes again; one line
     * @param data what it says; each of its lines becomes a field
     * @return bytes to send as they are
     */
    static byte[] of(String name, String id, String data) {
        return bytes("event: " + name + "\nid: " + id + '\n' + fields(data) + '\n');
    }

    /**
     * How long a browser is to wait before it comes again.
     *
     * @param millis ms
     * @return bytes to send as they are
     */
    static byte[] retryAfter(long millis) {
        return bytes("retry: " + millis + "\n\n");
    }

    /** Any of the three line ends of the standard parts two lines. */
    private static String fields(String data) {
        StringBuilder fields = new StringBuilder();
        for (String line : data.split("\r\n|\r|\n", -1)) {
            fields.append("data: ").append(line).append('\n');
        }
        return fields.toString();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
