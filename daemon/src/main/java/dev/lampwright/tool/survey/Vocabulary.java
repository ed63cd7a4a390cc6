package dev.lampwright.tool.survey;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** The words for each concept. */
final class Vocabulary {
    private static final int LETTERS_AT_AN_END = 4;
    private static final int LEAST_STEM = 5;
    private static final double WITHIN = 0.7;
    private static final String ENDINGS = "endings.";
    private static final String ENGLISH = "en";
    /** By language and concept, as they are written. */
    private static final Map<String, Map<Concept, List<String>>> WRITTEN = read();

    private static final Map<Concept, List<String>> WORDS = plain();

    private static final Map<String, List<String>> ENDINGS_BY_LANGUAGE = endings();

    /** What each form of each word refers to. */
    private static final Map<String, Set<Concept>> INFLECTED = inflected();

    private Vocabulary() {}

    private static Map<String, Map<Concept, List<String>>> read() {
        Map<String, Map<Concept, List<String>>> words = new TreeMap<>();
        text().lines().filter(Vocabulary::isOfWords).forEach(line -> {
            String[] parts = line.split(" = ", 2);
            String[] name = parts[0].split("\\.", 2);
            words.computeIfAbsent(name.length == 1 ? "" : name[1], any -> new EnumMap<>(Concept.class))
                    .put(
                            Concept.valueOf(name[0].toUpperCase(Locale.ROOT)),
                            List.of(parts[1].strip().split(" +")));
        });
        return words;
    }

    private static boolean isOfWords(String line) {
        return line.contains(" = ") && !line.startsWith(ENDINGS);
    }

    private static Map<String, List<String>> endings() {
        Map<String, List<String>> endings = new TreeMap<>();
        text().lines().filter(line -> line.startsWith(ENDINGS)).forEach(line -> {
            String[] parts = line.substring(ENDINGS.length()).split(" = ", 2);
            endings.put(
                    parts[0],
                    Arrays.stream(parts[1].strip().split(" +"))
                            .map(ending -> ending.replace("-", ""))
                            .toList());
        });
        return endings;
    }

    private static Map<Concept, List<String>> plain() {
        Map<Concept, List<String>> plain = new EnumMap<>(Concept.class);
        WRITTEN.values()
                .forEach(concepts ->
                        concepts.forEach((concept, words) -> plain.computeIfAbsent(concept, any -> new ArrayList<>())
                                .addAll(words.stream().map(Tokens::plain).toList())));
        return plain;
    }

    private static Map<String, Set<Concept>> inflected() {
        Map<String, Set<Concept>> inflected = new HashMap<>();
        ENDINGS_BY_LANGUAGE.forEach((language, endings) -> WRITTEN.getOrDefault(language, Map.of())
                .forEach((concept, words) -> words.forEach(word -> stem(concept, word, language)
                        .ifPresent(stem -> endings.forEach(ending -> inflected
                                .computeIfAbsent(Tokens.plain(stem) + ending, any -> EnumSet.noneOf(Concept.class))
                                .add(concept))))));
        return inflected;
    }

    /**
     * A word without what differs with number and gender. A word for a fault has none: it is a noun.
     *
     * @param concept what the word refers to
     * @param word as it is written
     * @param language its ISO 639-1 code
     * @return the beginning, at least five letters; empty if the word does not end in one of the language's endings
     */
    static Optional<String> stem(Concept concept, String word, String language) {
        return concept == Concept.FAULTY
                ? Optional.empty()
                : ENDINGS_BY_LANGUAGE.getOrDefault(language, List.of()).stream()
                        .filter(ending -> Tokens.plain(word).endsWith(ending)
                                && Tokens.plain(word).length() == word.length())
                        .max(Comparator.comparingInt(String::length))
                        .map(ending -> word.substring(0, word.length() - ending.length()))
                        .filter(stem -> stem.length() >= LEAST_STEM);
    }

    /**
     * Whether no word of another concept contains a stem.
     *
     * @param concept what the stem refers to
     * @param stem the beginning of one of its words, as it is written
     * @param language the word's ISO 639-1 code
     */
    static boolean isOnlyOf(Concept concept, String stem, String language) {
        return WRITTEN.get(language).entrySet().stream()
                .filter(entry -> entry.getKey() != concept)
                .flatMap(entry -> entry.getValue().stream())
                .noneMatch(word -> word.contains(stem));
    }

    /** Whether a token is the same word as one of a concept with another ending, and no word of any other concept. */
    private static boolean isInflected(Concept concept, String token) {
        return INFLECTED.getOrDefault(token, Set.of()).equals(Set.of(concept))
                && WORDS.values().stream().noneMatch(words -> words.contains(token));
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
     * @return 1 if it is one of its words, or one with another ending; somewhat less if it contains a long enough word, or 0
     */
    static double strength(Concept concept, String token) {
        List<String> words = WORDS.get(concept);
        if (words.contains(token) || isInflected(concept, token)) {
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
