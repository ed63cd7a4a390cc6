package dev.lampwright.phrase;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Something that is said to a person. Code that prints lines takes the English; code that has texts in other languages finds them by the code of the phrase.
 *
 * @param code what identifies it, of lower-case letters and underscores; {@link #QUOTED} for what is the same in every language; empty if
 *     there is only the English
 * @param values what is put into the text, by name: text, numbers, phrases, or lists of phrases
 * @param english the whole text in English
 */
public record Phrase(String code, Map<String, Object> values, String english) {
    /** The code of a line of a file, or of another command: it is not translated. */
    public static final String QUOTED = "quoted";

    /** Keeps a copy. */
    public Phrase {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /**
     * A text that has no code.
     *
     * @param english the whole text
     * @return the phrase
     */
    public static Phrase plain(String english) {
        return new Phrase("", Map.of(), english);
    }

    /**
     * A line of a file, or of another command.
     *
     * @param line as it stands there
     * @return the phrase
     */
    public static Phrase quoted(String line) {
        return new Phrase(QUOTED, Map.of(), line);
    }

    /**
     * A text with a code.
     *
     * @param code of lower-case letters and underscores
     * @param english the whole text
     * @param values names and values in turn
     * @return the phrase
     */
    public static Phrase of(String code, String english, Object... values) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i += 2) {
            named.put(String.valueOf(values[i]), values[i + 1]);
        }
        return new Phrase(code, named, english);
    }

    /**
     * The English of several.
     *
     * @param phrases the phrases
     * @return a line for each
     */
    public static List<String> english(List<Phrase> phrases) {
        return phrases.stream().map(Phrase::english).toList();
    }
}
