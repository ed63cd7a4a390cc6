package dev.lampwright.payload;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a number, with or without its unit, from text. */
public final class Measure {
    private static final int MOST_CHARS = 40;
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[0-9]+,[0-9]+");
    private static final Pattern WITH_UNIT = Pattern.compile("(" + NUMBER.pattern() + ")\\s*(\\D*)");

    private Measure() {}

    /**
     * A number in a unit.
     *
     * @param text without surrounding white space: a number, optionally followed by the unit's name or symbol unless the unit is
     *     {@link Unit#OWN}. Digits, one comma and digits are a number with a decimal comma (22nd CGPM, 2003, resolution 10: the decimal
     *     marker is the point or the comma; from memory)
     * @param unit the unit
     * @return the number, in that unit; a duration in s
     * @throws UnreadableException if it is not valid
     */
    public static double of(String text, Unit unit) throws UnreadableException {
        return switch (unit) {
            case ISO_8601 -> Durations.iso(text);
            case CLOCK -> Durations.clock(text);
            case SHORT_CLOCK -> 60 * Durations.twoParts(text);
            case STOPWATCH -> Durations.twoParts(text);
            case PARTS -> Durations.parts(text);
            default -> number(text, unit);
        };
    }

    private static double number(String text, Unit unit) throws UnreadableException {
        Optional<Matcher> parts = parts(text);
        if (parts.isEmpty()) {
            throw new UnreadableException("the value is not a number");
        }
        if (!unit.isSpelled(parts.get().group(4))) {
            throw new UnreadableException(
                    unit == Unit.OWN
                            ? "the value is not just a number; name its unit, or cut the number out with a pattern"
                            : "the value has something other than " + unit.word() + " after its number");
        }
        return Double.parseDouble(parts.get().group(1));
    }

    private static Optional<Matcher> parts(String text) {
        boolean comma = DECIMAL_COMMA.matcher(text).matches();
        Matcher parts = WITH_UNIT.matcher(comma ? text.replace(',', '.') : text);
        return text.length() <= MOST_CHARS && parts.matches() ? Optional.of(parts) : Optional.empty();
    }

    /**
     * The text after a number.
     *
     * @param text without surrounding white space
     * @return the rest of the text, empty if there is none; no result if it does not start with a number
     */
    static Optional<String> rest(String text) {
        return parts(text).map(parts -> parts.group(4));
    }
}
