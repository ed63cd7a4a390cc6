package dev.lampwright.tool.survey;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.stream.Collectors;

/** Numbers as words for the user. */
final class NumberText {
    private static final MathContext FOUR_DIGITS = new MathContext(4);
    private static final int MOST_WORDS = 6;

    private NumberText() {}

    /** A number with four significant digits. */
    static String number(double number) {
        return Double.isFinite(number)
                ? new BigDecimal(number).round(FOUR_DIGITS).stripTrailingZeros().toPlainString()
                : "?";
    }

    /** A count of things, such as {@code 1 change} or {@code 2 changes}. */
    static String count(long count, String thing) {
        return count + " " + thing + (count == 1 ? "" : "s");
    }

    /** How often, such as {@code once} or {@code 3 times}. */
    static String times(long count) {
        return count == 1 ? "once" : count + " times";
    }

    /** A list of words, shortened to the first few. */
    static String words(List<String> words) {
        String some = words.stream().limit(MOST_WORDS).collect(Collectors.joining(", "));
        return words.size() > MOST_WORDS ? some + ", …" : some;
    }
}
