package dev.lampwright.payload;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * The first match of a regular expression (of {@code java.util.regex}) in a text: its group {@code value}. Length and steps are bounded, so
 * no text can stall the reader.
 */
public final class Excerpt implements Cut {
    /** The group that is used. */
    public static final String GROUP = "value";

    /** The longest expression, in characters, and the maximum nesting of brackets: the compiler recurses for each part and bracket. */
    private static final int LONGEST = 1000;

    private static final int DEEPEST = 50;
    private static final int MOST_CHARS = 4000;
    private static final int MOST_STEPS = 200_000;

    private final String expression;
    private final Pattern pattern;

    /**
     * Reads an expression.
     *
     * @param expression a regular expression with a group {@code (?<value>…)}
     * @throws IllegalArgumentException if it is not valid; the message says why and what would be valid
     */
    public Excerpt(String expression) {
        this.expression = expression;
        this.pattern = compiled(expression);
        requireGroup(expression);
    }

    private static Pattern compiled(String expression) {
        if (expression.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "is longer than " + LONGEST + " characters; make it shorter, it need not cover all of the text");
        }
        if (depth(expression) > DEEPEST) {
            throw new IllegalArgumentException(
                    "has brackets more than " + DEEPEST + " deep; leave out those that change nothing");
        }
        try {
            return Pattern.compile(expression);
        } catch (PatternSyntaxException e) {
            throw new IllegalArgumentException(
                    "is not a valid regular expression: " + e.getDescription() + " near character " + (e.getIndex() + 1)
                            + "; correct it",
                    e);
        }
    }

    /** An upper bound of the nesting of brackets: escaped ones count too. */
    private static int depth(String expression) {
        int deepest = 0;
        int depth = 0;
        for (int i = 0; i < expression.length(); i++) {
            char one = expression.charAt(i);
            if (one == '(' || one == '[') {
                deepest = Math.max(deepest, ++depth);
            } else if ((one == ')' || one == ']') && depth > 0) {
                depth--;
            }
        }
        return deepest;
    }

    /** Checks for the group with an empty match. */
    private static void requireGroup(String expression) {
        Matcher nothing = Pattern.compile("|" + expression).matcher("");
        try {
            if (nothing.find()) {
                nothing.group(GROUP);
            }
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "has no group named value; put (?<value> and ) around what is wanted", e);
        }
    }

    /**
     * The expression.
     *
     * @return as written
     */
    public String expression() {
        return expression;
    }

    @Override
    public Optional<String> from(String text) throws UnreadableException {
        if (text.length() > MOST_CHARS) {
            throw new UnreadableException(
                    "the text is longer than " + MOST_CHARS + " characters, too long for a pattern");
        }
        try {
            Matcher matcher = pattern.matcher(new Stepped(text));
            return matcher.find() ? Optional.ofNullable(matcher.group(GROUP)) : Optional.empty();
        } catch (OutOfSteps | StackOverflowError e) {
            throw new UnreadableException("the pattern takes too many steps with this text; make it simpler");
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Excerpt excerpt && excerpt.expression.equals(expression);
    }

    @Override
    public int hashCode() {
        return expression.hashCode();
    }

    @Override
    public String toString() {
        return "pattern " + expression;
    }

    private static final class OutOfSteps extends RuntimeException {
        private static final long serialVersionUID = 1L;

        OutOfSteps() {
            super("", null, false, false);
        }
    }

    /** A text that allows a limited number of accesses. Every step of the matcher accesses a character. */
    private static final class Stepped implements CharSequence {
        private final String text;
        private int steps;

        Stepped(String text) {
            this.text = text;
        }

        @Override
        public char charAt(int index) {
            if (++steps > MOST_STEPS) {
                throw new OutOfSteps();
            }
            return text.charAt(index);
        }

        @Override
        public int length() {
            return text.length();
        }

        @Override
        public CharSequence subSequence(int start, int end) {
            return text.substring(start, end);
        }

        @Override
        public String toString() {
            return text;
        }
    }
}
