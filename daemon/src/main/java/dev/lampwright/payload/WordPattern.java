package dev.lampwright.payload;

import java.util.Arrays;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A word in which {@code *} stands for any characters, or none; case does not count. */
public final class WordPattern {
    private final Pattern pattern;

    public WordPattern(String text) {
        String expression =
                Arrays.stream(text.split("\\*+", -1)).map(Pattern::quote).collect(Collectors.joining(".*"));
        this.pattern = Pattern.compile(expression, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.DOTALL);
    }

    public boolean matches(String word) {
        return pattern.matcher(word).matches();
    }
}
