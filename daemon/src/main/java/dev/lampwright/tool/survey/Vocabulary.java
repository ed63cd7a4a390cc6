package dev.lampwright.tool.survey;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The words for each concept. */
final class Vocabulary {
    private static final int LETTERS_AT_AN_END = 4;
    private static final double WITHIN = 0.7;
    private static final Map<Concept, List<String>> WORDS = read();

    private Vocabulary() {}

    private static Map<Concept, List<String>> read() {
        Map<Concept, List<String>> words = new EnumMap<>(Concept.class);
        text().lines().filter(line -> line.contains(" = ")).forEach(line -> {
            String[] parts = line.split(" = ", 2);
            words.put(
                    Concept.valueOf(parts[0].toUpperCase(Locale.ROOT)),
                    List.of(parts[1].strip().split(" +")));
        });
        return words;
    }

    private static String text() {
        try (InputStream in = Vocabulary.class.getResourceAsStream("words.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The words for a concept.
     *
     * @param concept the concept
     * @return the words, lower case without accents
     */
    static List<String> words(Concept concept) {
        return WORDS.get(concept);
    }

    /**
     * How surely a token speaks of a concept.
     *
     * @param concept the concept
     * @param token lower case without accents
     * @return 1 if it is one of its words, somewhat less if a long enough word stands in it, or 0
     */
    static double strength(Concept concept, String token) {
        List<String> words = WORDS.get(concept);
        if (words.contains(token)) {
            return 1;
        }
        return words.stream().anyMatch(word -> isWithin(word, token)) ? WITHIN : 0;
    }

    private static boolean isWithin(String word, String token) {
        return word.length() == LETTERS_AT_AN_END
                ? token.startsWith(word) || token.endsWith(word)
                : word.length() > LETTERS_AT_AN_END && token.contains(word);
    }
}
