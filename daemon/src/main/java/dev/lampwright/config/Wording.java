package dev.lampwright.config;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** How keys and values of a file are shown to the user. */
final class Wording {
    private static final int LONGEST = 60;
    private static final Pattern BARE_KEY = Pattern.compile("[A-Za-z0-9_-]+");

    private Wording() {}

    /**
     * A key with all that it stands in, as it would be written in TOML.
     *
     * @param path names from the outermost on
     * @return for instance {@code printer.readings."odd name"}
     */
    static String key(List<String> path) {
        return path.stream()
                .map(name -> BARE_KEY.matcher(name).matches() ? name : quoted(name))
                .collect(Collectors.joining("."));
    }

    /**
     * A value, to follow <em>is</em>.
     *
     * @param value as the TOML parser gives it
     * @return the value itself, shortened if it is long; of a table or an array only what it is
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
     * @return shortened if it is long
     */
    static String quoted(String text) {
        return '"' + shortened(text) + '"';
    }

    /**
     * A number without needless digits.
     *
     * @param number a finite number
     * @return for instance {@code 5} or {@code 0.1}
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

    private static boolean breaksLine(int c) {
        return Character.isISOControl(c)
                || Character.getType(c) == Character.LINE_SEPARATOR
                || Character.getType(c) == Character.PARAGRAPH_SEPARATOR
                || Character.getType(c) == Character.FORMAT;
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "...";
    }
}
