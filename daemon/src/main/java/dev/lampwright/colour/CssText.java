package dev.lampwright.colour;

import java.util.Locale;

/** The characters of a CSS colour, read from left to right. Source of the number's shape: CSS Syntax Module Level 3. */
final class CssText {
    private final String text;
    private int at;

    /**
     * Creates a reader at the first character.
     *
     * @param text what to read; case does not count
     */
    CssText(String text) {
        this.text = text.toLowerCase(Locale.ROOT);
    }

    void skipSpaces() {
        while (Character.isWhitespace(peek(0))) {
            at++;
        }
    }

    boolean atEnd() {
        return at == text.length();
    }

    /** Takes a character if it is the next. */
    boolean take(char wanted) {
        boolean there = peek(0) == wanted && !atEnd();
        if (there) {
            at++;
        }
        return there;
    }

    /** Takes as many letters, digits and hyphens as there are, possibly none. */
    String word() {
        int from = at;
        while (isLetter(peek(0)) || isDigit(peek(0)) || peek(0) == '-') {
            at++;
        }
        return text.substring(from, at);
    }

    /** Takes letters or a percent sign at this position, possibly none. */
    String unit() {
        if (take('%')) {
            return "%";
        }
        int from = at;
        while (isLetter(peek(0))) {
            at++;
        }
        return text.substring(from, at);
    }

    boolean startsNumber() {
        int sign = isSign(peek(0)) ? 1 : 0;
        return isDigit(peek(sign)) || (peek(sign) == '.' && isDigit(peek(sign + 1)));
    }

    /** Takes a number; only where {@link #startsNumber()}. */
    double number() {
        int from = at;
        at += isSign(peek(0)) ? 1 : 0;
        digits();
        if (peek(0) == '.' && isDigit(peek(1))) {
            at++;
            digits();
        }
        int sign = isSign(peek(1)) ? 1 : 0;
        if (peek(0) == 'e' && isDigit(peek(1 + sign))) {
            at += 1 + sign;
            digits();
        }
        return Double.parseDouble(text.substring(from, at));
    }

    /** The unread rest, shortened for a message. */
    String rest() {
        String rest = text.substring(at);
        return rest.length() > 20 ? rest.substring(0, 20) + "…" : rest;
    }

    private void digits() {
        while (isDigit(peek(0))) {
            at++;
        }
    }

    /** The character a number of places ahead; NUL past the end. */
    private char peek(int ahead) {
        return at + ahead < text.length() ? text.charAt(at + ahead) : '\0';
    }

    private static boolean isSign(char c) {
        return c == '+' || c == '-';
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static boolean isLetter(char c) {
        return c >= 'a' && c <= 'z';
    }
}
