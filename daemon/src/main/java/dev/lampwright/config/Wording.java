package dev.lampwright.config;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** How keys and values of a file are shown to the user. */
final class Wording {
    private static final int LONGEST = 60;
    private static final int LONGEST_COMPLAINT = 300;
    private static final Pattern BARE_KEY = Pattern.compile("[A-Za-z0-9_-]+");

    private Wording() {}

    /**
     * A key with everything around it, as it would be written in TOML.
     *
     * @param path names from the outermost on
     * @return for example {@code printer.readings."odd name"}
     */
    static String key(List<String> path) {
        return path.stream()
                .map(name -> BARE_KEY.matcher(name).matches() ? name : quoted(name))
                .collect(Collectors.joining("."));
    }

    /**
     * A value, to follow <em>is</em>.
     *
     * @param value as returned by the TOML parser
     * @return the value itself, shortened if long; for a table or an array only its type
     */
    static String value(Object value) {
        if (value instanceof Map) {
            return "a table";
        }
        if (value instanceof List) {
            return "an array";
        }
        return value instanceof String text ? quoted(text) : shortened(String.valueOf(value));
    }

    /**
     * A text in quotes.
     *
     * @param text any text
     * @return shortened if long
     */
    static String quoted(String text) {
        return '"' + shortened(text) + '"';
    }

    /**
     * A number without needless digits.
     *
     * @param number a finite number
     * @return for example {@code 5} or {@code 0.1}
     */
    static String number(double number) {
        BigDecimal exact = BigDecimal.valueOf(number).stripTrailingZeros();
        return exact.toPlainString();
    }

    /**
     * A text that stays on its line.
     *
     * @param text any text
     * @return the same with control characters as {@code \}{@code u} and four hexadecimal digits
     */
    static String printable(String text) {
        StringBuilder printable = new StringBuilder(text.length());
        text.chars().forEach(c -> {
            if (breaksLine(c)) {
                printable.append(String.format("\\u%04x", c));
            } else {
                printable.append((char) c);
            }
        });
        return printable.toString();
    }

    /**
     * Whether a name contains a control character, or one that ends a line.
     *
     * @param name any text
     * @return true if it does, so that the name cannot be read
     */
    static boolean hasControl(String name) {
        return name.chars().anyMatch(Wording::isControl);
    }

    private static boolean isControl(int c) {
        return Character.isISOControl(c)
                || Character.getType(c) == Character.LINE_SEPARATOR
                || Character.getType(c) == Character.PARAGRAPH_SEPARATOR;
    }

    private static boolean breaksLine(int c) {
        return isControl(c) || Character.getType(c) == Character.FORMAT;
    }

    /**
     * A message without long values.
     *
     * @param text the message, with values in quotes
     * @return the same, with each long value shortened
     */
    static String withShortValues(String text) {
        if (text.length() <= LONGEST_COMPLAINT) {
            return text;
        }
        StringBuilder all = new StringBuilder();
        int from = 0;
        for (int open = text.indexOf('"'); open >= 0; open = text.indexOf('"', from)) {
            int close = text.indexOf('"', open + 1);
            int end = close < 0 ? text.length() : close;
            all.append(text, from, open + 1).append(shortened(text.substring(open + 1, end)));
            all.append(close < 0 ? "" : "\"");
            from = Math.min(text.length(), end + 1);
        }
        String shorter = all.append(text, from, text.length()).toString();
        return shorter.length() <= 2 * LONGEST_COMPLAINT
                ? shorter
                : shorter.substring(0, 2 * LONGEST_COMPLAINT) + "...";
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "...";
    }
}
