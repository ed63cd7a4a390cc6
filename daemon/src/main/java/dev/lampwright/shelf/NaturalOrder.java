package dev.lampwright.shelf;

import java.util.Comparator;

/** The order of names in which 2 comes before 10, and case does not matter. Allocates nothing. */
final class NaturalOrder implements Comparator<String> {
    /** The only one. */
    static final Comparator<String> OF_NAMES = new NaturalOrder();

    private NaturalOrder() {}

    @Override
    public int compare(String one, String other) {
        int i = 0;
        int j = 0;
        while (i < one.length() && j < other.length()) {
            if (isDigit(one, i) && isDigit(other, j)) {
                int from = afterZeros(one, i);
                int otherFrom = afterZeros(other, j);
                i = afterDigits(one, from);
                j = afterDigits(other, otherFrom);
                int order = compareNumbers(one, from, i, other, otherFrom, j);
                if (order != 0) {
                    return order;
                }
            } else {
                int order = Character.compare(folded(one.charAt(i)), folded(other.charAt(j)));
                if (order != 0) {
                    return order;
                }
                i++;
                j++;
            }
        }
        return Integer.compare(one.length() - i, other.length() - j);
    }

    /** Of two numbers without leading zeros the longer one is greater. */
    private static int compareNumbers(String one, int from, int to, String other, int otherFrom, int otherTo) {
        int order = Integer.compare(to - from, otherTo - otherFrom);
        for (int k = 0; order == 0 && k < to - from; k++) {
            order = Character.compare(one.charAt(from + k), other.charAt(otherFrom + k));
        }
        return order;
    }

    private static int afterZeros(String text, int from) {
        int at = from;
        while (at < text.length() && text.charAt(at) == '0') {
            at++;
        }
        return at;
    }

    private static int afterDigits(String text, int from) {
        int at = from;
        while (at < text.length() && isDigit(text, at)) {
            at++;
        }
        return at;
    }

    private static boolean isDigit(String text, int at) {
        return text.charAt(at) >= '0' && text.charAt(at) <= '9';
    }

    /** As {@link String#CASE_INSENSITIVE_ORDER} does. */
    private static char folded(char letter) {
        return Character.toLowerCase(Character.toUpperCase(letter));
    }
}
