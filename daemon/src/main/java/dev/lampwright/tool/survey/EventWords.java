package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * The words with which an event begins and ends.
 *
 * @param begin words for the beginning
 * @param end words for the end
 */
record EventWords(List<String> begin, List<String> end) {
    /** Classifies words; those that are neither are left out. */
    static EventWords of(List<String> words) {
        List<String> begin = new ArrayList<>();
        List<String> end = new ArrayList<>();
        for (String word : words) {
            List<String> tokens = Tokens.of(word);
            if (speaks(tokens, Concept.END)) {
                end.add(word);
            } else if (speaks(tokens, Concept.BEGIN)) {
                begin.add(word);
            }
        }
        return new EventWords(begin, end);
    }

    private static boolean speaks(List<String> tokens, Concept concept) {
        return tokens.stream().anyMatch(token -> Vocabulary.words(concept).contains(token));
    }
}
