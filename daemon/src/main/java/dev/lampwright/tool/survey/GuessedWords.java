package dev.lampwright.tool.survey;

import dev.lampwright.payload.WordPattern;
import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Words for states that were not heard: the usual ones, and those of the languages of the words that were. Warming and printing are not
 * among them: where a printer has no word for those, its readings show them.
 */
final class GuessedWords {
    /** In the order in which they are tried. Common practice, no source. */
    private static final Map<PrinterState, List<String>> USUAL = usual();

    private static final Map<PrinterState, Concept> CONCEPTS = Map.of(
            PrinterState.FAULT, Concept.FAULTY,
            PrinterState.STOPPED, Concept.STOPPED,
            PrinterState.HELD, Concept.HELD,
            PrinterState.DONE, Concept.DONE,
            PrinterState.IDLE, Concept.IDLE);
    private static final int LONG = 5;

    private GuessedWords() {}

    /** Case does not count. */
    private static String folded(String word) {
        return word.toLowerCase(Locale.ROOT);
    }

    /** Whatever its ending is. */
    private static String pattern(Concept concept, String word, String language) {
        Optional<String> stem =
                Vocabulary.stem(concept, word, language).filter(one -> Vocabulary.isOnlyOf(concept, one, language));
        return stem.or(() -> Optional.of(word).filter(one -> one.length() >= LONG))
                .map(part -> "*" + part + "*")
                .orElse(word + "*");
    }

    private static Map<PrinterState, List<String>> usual() {
        Map<PrinterState, List<String>> words = new LinkedHashMap<>();
        words.put(
                PrinterState.FAULT,
                List.of(
                        "*ERROR*",
                        "ERR*",
                        "*FAULT*",
                        "*FAIL*",
                        "*ALARM*",
                        "*EMERGENCY*",
                        "*CRITICAL*",
                        "*JAM*",
                        "*BLOCKED*",
                        "*TROUBLE*"));
        words.put(PrinterState.STOPPED, List.of("*CANCEL*", "*ABORT*", "STOP", "*STOPPED*", "*KILLED*"));
        words.put(PrinterState.HELD, List.of("*PAUS*", "HELD", "*HOLD*", "*SUSPENDED*", "*INTERRUPTED*", "WAIT*"));
        words.put(PrinterState.DONE, List.of("*DONE*", "*FINISH*", "*COMPLETE*", "END", "*ENDED", "*SUCCESS*"));
        words.put(PrinterState.IDLE, List.of("IDLE", "READY", "RDY", "STANDBY", "STBY"));
        return words;
    }

    /**
     * What to guess.
     *
     * @param heard all words that were heard at the place, including those bound to no state
     * @param known the states that have a word
     * @return words for the other states, none of which contradicts a word that was heard; empty for codes
     */
    static Map<PrinterState, List<String>> of(List<String> heard, StateWords known) {
        Map<PrinterState, List<String>> guesses = new LinkedHashMap<>();
        if (heard.stream().allMatch(word -> word.matches(".{0,2}[0-9]+"))) {
            return guesses;
        }
        List<String> tokens =
                heard.stream().flatMap(word -> Tokens.of(word).stream()).toList();
        List<String> languages = Vocabulary.languages(tokens);
        Set<String> seen = known.known().values().stream()
                .flatMap(List::stream)
                .map(GuessedWords::folded)
                .collect(Collectors.toCollection(HashSet::new));
        USUAL.forEach((state, usual) -> {
            List<String> patterns = new ArrayList<>(usual);
            languages.forEach(language -> Vocabulary.words(CONCEPTS.get(state), language).stream()
                    .map(word -> pattern(CONCEPTS.get(state), word, language))
                    .forEach(patterns::add));
            List<String> free = patterns.stream()
                    .filter(pattern -> seen.add(folded(pattern)))
                    .filter(pattern -> heard.stream().noneMatch(new WordPattern(pattern)::matches))
                    .toList();
            if (!known.known().containsKey(state) && !free.isEmpty()) {
                guesses.put(state, free);
            }
        });
        return guesses;
    }
}
