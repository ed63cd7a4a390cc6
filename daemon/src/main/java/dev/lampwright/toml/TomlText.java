package dev.lampwright.toml;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Values in TOML 1.0 notation, each on one line. */
public final class TomlText {
    private static final Pattern BARE = Pattern.compile("[A-Za-z0-9_-]+");
    private static final char DELETE = 0x7F;

    private TomlText() {}

    /**
     * Any value.
     *
     * @param value of a kind listed at {@link TomlDocument#values}, or a {@code Double}
     * @return its text
     */
    public static String of(Object value) {
        if (value instanceof Map<?, ?> table) {
            return table.isEmpty() ? "{}" : "{ " + pairs(table) + " }";
        }
        if (value instanceof List<?> array) {
            return array.stream().map(TomlText::of).collect(Collectors.joining(", ", "[", "]"));
        }
        if (value instanceof String text) {
            return text.indexOf('\\') >= 0 ? literal(text) : quoted(text);
        }
        if (value instanceof TemporalAccessor time) {
            return time(time);
        }
        return value instanceof Double number ? number(number) : value.toString();
    }

    /** A key and its value; several tables in an array get a line each. */
    static String pair(List<String> names, Object value, String newline) {
        boolean lines = value instanceof List<?> array
                && array.size() > 1
                && array.stream().allMatch(each -> each instanceof Map);
        String shown = lines
                ? ((List<?>) value)
                        .stream()
                                .map(each -> newline + "  " + of(each) + ",")
                                .collect(Collectors.joining("", "[", newline + "]"))
                : of(value);
        return key(names) + " = " + shown;
    }

    private static String pairs(Map<?, ?> table) {
        return table.entrySet().stream()
                .map(entry -> key(entry.getKey().toString()) + " = " + of(entry.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String number(double number) {
        if (Double.isNaN(number)) {
            return "nan";
        }
        return Double.isInfinite(number)
                ? number > 0 ? "inf" : "-inf"
                : BigDecimal.valueOf(number).toString();
    }

    /** Always has seconds: ISO 8601 allows leaving them out, TOML does not. */
    private static String time(TemporalAccessor time) {
        if (time instanceof OffsetDateTime) {
            return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
        }
        if (time instanceof LocalDateTime) {
            return DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(time);
        }
        if (time instanceof LocalTime) {
            return DateTimeFormatter.ISO_LOCAL_TIME.format(time);
        }
        if (time instanceof LocalDate) {
            return time.toString();
        }
        throw new IllegalArgumentException("TOML has no " + time.getClass());
    }

    /**
     * A name of a key, in quotes if needed.
     *
     * @param name any text
     * @return the name as written before the equals sign
     */
    public static String key(String name) {
        return BARE.matcher(name).matches() ? name : quoted(name);
    }

    /**
     * A key with several names.
     *
     * @param names one or more
     * @return the names separated by dots
     */
    public static String key(List<String> names) {
        return names.stream().map(TomlText::key).collect(Collectors.joining("."));
    }

    /**
     * A text as a basic string, whatever it contains.
     *
     * @param text any text
     * @return the text in double quotes
     */
    public static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.chars().forEach(c -> {
            if (c == '"' || c == '\\') {
                quoted.append('\\').append((char) c);
            } else if (isControl(c)) {
                quoted.append(String.format("\\u%04X", c));
            } else {
                quoted.append((char) c);
            }
        });
        return quoted.append('"').toString();
    }

    /**
     * A text with backslashes, as a literal string if possible.
     *
     * @param text any text
     * @return the text in single quotes, or as from {@link #quoted}
     */
    public static String literal(String text) {
        boolean can = text.chars().noneMatch(c -> c == '\'' || isControl(c));
        return can ? '\'' + text + '\'' : quoted(text);
    }

    /**
     * A text as a comment.
     *
     * @param text any text
     * @return the text on one line, after a hash
     */
    public static String comment(String text) {
        return "# " + text.replaceAll("\\p{Cntrl}", ".");
    }

    private static boolean isControl(int c) {
        return c < ' ' || c == DELETE;
    }
}
