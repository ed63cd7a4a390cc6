package dev.lampwright.tool.survey;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** The words for each concept. */
final class Vocabulary {
    private static final int LETTERS_AT_AN_END = 4;
    private static final double WITHIN = 0.7;
    private static final String ENGLISH = "en";
    /** By language and concept, as they are written. */
    private static final Map<String, Map<Concept, List<String>>> WRITTEN = read();

    private static final Map<Concept, List<String>> WORDS = plain();

    private Vocabulary() {}

    private static Map<String, Map<Concept, List<String>>> read() {
        Map<String, Map<Concept, List<String>>> words = new TreeMap<>();
        text().lines().filter(line -> line.contains(" = ")).forEach(line -> {
            String[] parts = line.split(" = ", 2);
            String[] name = parts[0].split("\\.", 2);
            words.computeIfAbsent(name.length == 1 ? "" : name[1], any -> new EnumMap<>(Concept.class))
                    .put(
                            Concept.valueOf(name[0].toUpperCase(Locale.ROOT)),
                            List.of(parts[1].strip().split(" +")));
        });
        return words;
    }

    private static Map<Concept, List<String>> plain() {
        Map<Concept, List<String>> plain = new EnumMap<>(Concept.class);
        WRITTEN.values()
                .forEach(concepts ->
                        concepts.forEach((concept, words) -> plain.computeIfAbsent(concept, any -> new ArrayList<>())
                                .addAll(words.stream().map(Tokens::plain).toList())));
        return plain;
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
     * The languages of some words, other than English; a word that is also English proves nothing.
     *
     * @param tokens lower case without accents
     * @return those that have a word for a state among them, ISO 639-1 codes
     */
    static List<String> languages(Collection<String> tokens) {
        List<String> others =
                tokens.stream().filter(token -> !isOf(ENGLISH, List.of(token))).toList();
        return WRITTEN.keySet().stream()
                .filter(language -> !language.isEmpty() && !language.equals(ENGLISH) && isOf(language, others))
                .toList();
    }

    private static boolean isOf(String language, Collection<String> tokens) {
        return WRITTEN.get(language).values().stream()
                .flatMap(List::stream)
                .map(Tokens::plain)
                .anyMatch(tokens::contains);
    }

    /**
     * The words for a concept in a language.
     *
     * @param concept the concept
     * @param language its ISO 639-1 code
     * @return the words as they are written
     */
    static List<String> words(Concept concept, String language) {
        return WRITTEN.getOrDefault(language, Map.of()).getOrDefault(concept, List.of());
    }

    /**
     * How surely a token refers to a concept.
     *
     * @param concept the concept
     * @param token lower case without accents
     * @return 1 if it is one of its words, somewhat less if it contains a long enough word, or 0
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
