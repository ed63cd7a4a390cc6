package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A requested brightness: a share, or a word. "On" is the last requested level above 0, so that a switch restores what it turned off.
 *
 * @param kind share or word
 * @param share 0 to 1, if it is a share
 */
record WantedLevel(Kind kind, double share) {
    /** The valid values, for a refusal and for the reference. */
    static final String WANTED = "a number from 0 to 1, \"40 %\", \"on\", \"off\" or \"auto\"";

    /** A number with at most nine decimals, and an optional percent sign, which may follow a space, including a no-break space. */
    private static final Pattern NUMBER = Pattern.compile("(\\d{1,3}(?:\\.\\d{1,9})?)([ \\u00a0\\u202f]?%)?");

    private static final int PERCENT_DIGITS = 2;

    enum Kind {
        /** As bright as it was last. */
        ON,
        /** Not given by anybody. */
        AUTO,
        /** A share of the maximum; off is 0. */
        SHARE
    }

    /**
     * Reads one.
     *
     * @param node a number or a text, upper or lower case
     * @return empty if it is not a level
     */
    static Optional<WantedLevel> of(JsonNode node) {
        if (node.isNumber()) {
            return share(node.asDouble());
        }
        return node.isTextual() ? of(node.asText().strip().toLowerCase(Locale.ROOT)) : Optional.empty();
    }

    private static Optional<WantedLevel> of(String text) {
        return switch (text) {
            case "on" -> Optional.of(new WantedLevel(Kind.ON, Double.NaN));
            case "off" -> share(0);
            case Spoken.AUTO -> Optional.of(new WantedLevel(Kind.AUTO, Double.NaN));
            default -> number(text);
        };
    }

    private static Optional<WantedLevel> number(String text) {
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        BigDecimal number = new BigDecimal(matcher.group(1));
        return share((matcher.group(2) == null ? number : number.movePointLeft(PERCENT_DIGITS)).doubleValue());
    }

    private static Optional<WantedLevel> share(double share) {
        return share >= 0 && share <= 1 ? Optional.of(new WantedLevel(Kind.SHARE, share + 0.0)) : Optional.empty();
    }

    boolean isAuto() {
        return kind == Kind.AUTO;
    }

    /** The share, with the given value for "on". */
    double orWhenOn(double on) {
        return kind == Kind.ON ? on : share;
    }
}
