package dev.lampwright.cli;

import java.util.Collection;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes values as JSON (RFC 8259). */
final class Json {
    private Json() {}

    /**
     * A value as JSON, on one line.
     *
     * @param value a map with texts for keys, a collection, a text, a finite number or a boolean, and such within
     * @return JSON
     * @throws IllegalArgumentException for anything else
     */
    static String of(Object value) {
        if (value instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(entry -> text(String.valueOf(entry.getKey())) + ":" + of(entry.getValue()))
                    .collect(Collectors.joining(",", "{", "}"));
        }
        if (value instanceof Collection<?> elements) {
            return elements.stream().map(Json::of).collect(Collectors.joining(",", "[", "]"));
        }
        if (value instanceof String text) {
            return text(text);
        }
        if (value instanceof Boolean || isFinite(value)) {
            return value.toString();
        }
        throw new IllegalArgumentException("no JSON for " + value);
    }

    private static boolean isFinite(Object value) {
        return value instanceof Number number && Double.isFinite(number.doubleValue());
    }

    private static String text(String text) {
        return text.chars().mapToObj(Json::character).collect(Collectors.joining("", "\"", "\""));
    }

    /** RFC 8259, section 7: quote, backslash and U+0000 to U+001F must be escaped. */
    private static String character(int c) {
        if (c == '"' || c == '\\') {
            return "\\" + (char) c;
        }
        return Character.isISOControl(c) ? String.format("\\u%04x", c) : String.valueOf((char) c);
    }
}
