package dev.lampwright.printer;

import java.util.Arrays;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A word in which {@code *} stands for any characters, or none; case does not count. */
final class WordPattern {
    private final Pattern pattern;

    WordPattern(String text) {
        String expression =
                Arrays.stream(text.split("\\*+", -1)).map(Pattern::quote).collect(Collectors.joining(".*"));
        this.pattern = Pattern.compile(expression, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.DOTALL);
    }

    boolean matches(String word) {
        return pattern.matcher(word).matches();
    }
}
