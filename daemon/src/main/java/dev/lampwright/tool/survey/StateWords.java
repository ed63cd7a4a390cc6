package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which state each of a printer's words stands for. */
final class StateWords {
    /** Of a text with several such words the first here counts: “print done” is done, “heating for print” is warming. */
    private static final Map<Concept, PrinterState> ORDER = order();

    private static final double WHOLE = 1;

    private final Map<PrinterState, List<String>> known = new LinkedHashMap<>();
    private final List<String> unknown = new ArrayList<>();

    private StateWords() {}

    private static Map<Concept, PrinterState> order() {
        Map<Concept, PrinterState> order = new LinkedHashMap<>();
        order.put(Concept.FAULTY, PrinterState.FAULT);
        order.put(Concept.STOPPED, PrinterState.STOPPED);
        order.put(Concept.HELD, PrinterState.HELD);
        order.put(Concept.DONE, PrinterState.DONE);
        order.put(Concept.WARMING, PrinterState.WARMING);
        order.put(Concept.IDLE, PrinterState.IDLE);
        order.put(Concept.WAITING, PrinterState.HELD);
        order.put(Concept.PRINTING, PrinterState.PRINTING);
        return order;
    }

    /**
     * Sorts words by what they say.
     *
     * @param words texts that came, in which {@code *} may stand for numbers
     * @return which state each stands for
     */
    static StateWords of(List<String> words) {
        return of(words, Map.of());
    }

    /**
     * Sorts words by what they say; those that say nothing by what the printer did meanwhile.
     *
     * @param words texts that came, in which {@code *} may stand for numbers
     * @param meanings what the printer did while it said a word, for those of which it is known
     * @return which state each stands for
     */
    static StateWords of(List<String> words, Map<String, PrinterState> meanings) {
        StateWords sorted = new StateWords();
        words.forEach(word -> sorted.add(word, stateOf(word).or(() -> Optional.ofNullable(meanings.get(word)))));
        return sorted;
    }

    private void add(String word, Optional<PrinterState> state) {
        if (state.isEmpty()) {
            unknown.add(word);
            return;
        }
        List<String> patterns = known.computeIfAbsent(state.get(), any -> new ArrayList<>());
        String pattern = pattern(word, state.get());
        if (patterns.stream().noneMatch(pattern::equalsIgnoreCase)) {
            patterns.add(pattern);
        }
    }

    private static Optional<PrinterState> stateOf(String word) {
        List<String> tokens = Tokens.of(word);
        return stateOf(tokens, WHOLE).or(() -> stateOf(tokens, Double.MIN_VALUE));
    }

    private static Optional<PrinterState> stateOf(List<String> tokens, double strength) {
        return ORDER.entrySet().stream()
                .filter(entry ->
                        tokens.stream().anyMatch(token -> Vocabulary.strength(entry.getKey(), token) >= strength))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** What follows the first word of a fault may be another next time. */
    private static String pattern(String word, PrinterState state) {
        int space = word.strip().indexOf(' ');
        if (state == PrinterState.FAULT && space > 0) {
            return word.strip().substring(0, space) + "*";
        }
        return word.strip();
    }

    /**
     * The words for each state.
     *
     * @return in the order in which the states first came; {@code *} stands for any characters
     */
    Map<PrinterState, List<String>> known() {
        return known;
    }

    /** Words that stand for no state. */
    List<String> unknown() {
        return unknown;
    }

    /** How many words are known. */
    int count() {
        return known.values().stream().mapToInt(List::size).sum();
    }
}
