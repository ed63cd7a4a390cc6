package dev.lampwright.tool.fit;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Something that the fitting says. A terminal of lines prints the English; one with texts of its own finds them by the code.
 *
 * @param code what identifies it; empty if there is only the English
 * @param values what is put into the text, by name
 * @param english the whole text in English
 */
public record Phrase(String code, Map<String, Object> values, String english) {
    /** Keeps a copy. */
    public Phrase {
        values = Map.copyOf(values);
    }

    /** A text that has no code. */
    static Phrase plain(String english) {
        return new Phrase("", Map.of(), english);
    }

    /**
     * A text with a code.
     *
     * @param code of lower-case letters and underscores
     * @param english the whole text
     * @param values names and values in turn
     */
    static Phrase of(String code, String english, Object... values) {
        return new Phrase(code, named(values), english);
    }

    /** Names and values in turn, as a map. */
    static Map<String, Object> named(Object... values) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i += 2) {
            named.put(String.valueOf(values[i]), values[i + 1]);
        }
        return named;
    }
}
