package dev.lampwright.config;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/** What the words of a file stand for. */
final class Words {
    private Words() {}

    /**
     * Gives each value its word.
     *
     * @param values the values
     * @param word the word for one
     * @param <T> what they are
     * @return the values by word, in their order
     */
    static <T> Map<String, T> of(T[] values, Function<T, String> word) {
        Map<String, T> words = new LinkedHashMap<>();
        for (T value : values) {
            words.put(word.apply(value), value);
        }
        return words;
    }

    /**
     * The usual word for a constant.
     *
     * @param constant the constant
     * @return its name in lower case
     */
    static String lowerCase(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }
}
