package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which state each of a printer's words stands for. */
final class StateWords {
    /** If a text has several such words, the first in this order counts: “print done” is done, “heating for print” is warming. */
    private static final Map<Concept, PrinterState> ORDER = order();

    private static final double WHOLE = 1;

    /** Words that deny the next one, in a few languages. Common practice, no source. */
    private static final Set<String> NONE = Set.of(
            "no", "not", "non", "kein", "keine", "ohne", "pas", "sans", "sin", "senza", "nessun", "geen", "bez", "brak",
            "sem", "ingen");

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
     * Classifies words by their own meaning.
     *
     * @param words reported texts, in which {@code *} can stand for numbers
     * @return which state each stands for
     */
    static StateWords of(List<String> words) {
        StateWords sorted = new StateWords();
        words.forEach(word -> sorted.add(word, stateOf(word), words));
        return sorted;
    }

    /**
     * Classifies words by what they are known to stand for.
     *
     * @param words reported texts, in which {@code *} can stand for numbers
     * @param meanings the state that each stands for; what is missing stands for none
     * @return which state each stands for
     */
    static StateWords of(List<String> words, Map<String, PrinterState> meanings) {
        StateWords sorted = new StateWords();
        words.forEach(word -> sorted.add(word, Optional.ofNullable(meanings.get(word)), words));
        return sorted;
    }

    private void add(String word, Optional<PrinterState> state, List<String> all) {
        if (state.isEmpty()) {
            unknown.add(word);
            return;
        }
        List<String> patterns = known.computeIfAbsent(state.get(), any -> new ArrayList<>());
        String pattern = pattern(word, state.get(), all);
        if (patterns.stream().noneMatch(pattern::equalsIgnoreCase)) {
            patterns.add(pattern);
        }
    }

    /**
     * What a word means by itself.
     *
     * @param word a reported text, in which {@code *} can stand for numbers
     * @return the state that it stands for; empty if it is in no list
     */
    static Optional<PrinterState> stateOf(String word) {
        List<String> tokens = Tokens.of(word);
        return stateOf(tokens, WHOLE).or(() -> stateOf(tokens, Double.MIN_VALUE));
    }

    /** Whether a word means waiting rather than a pause: a printer at rest waits as well. */
    static boolean saysWaiting(String word) {
        List<String> tokens = Tokens.of(word);
        return speaks(tokens, Concept.WAITING, Double.MIN_VALUE) && !speaks(tokens, Concept.HELD, Double.MIN_VALUE);
    }

    private static Optional<PrinterState> stateOf(List<String> tokens, double strength) {
        return ORDER.entrySet().stream()
                .filter(entry -> speaks(tokens, entry.getKey(), strength))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** No error is none. */
    private static boolean speaks(List<String> tokens, Concept concept, double strength) {
        for (int i = 0; i < tokens.size(); i++) {
            boolean denied = i > 0 && NONE.contains(tokens.get(i - 1));
            if (!denied && Vocabulary.strength(concept, tokens.get(i)) >= strength) {
                return true;
            }
        }
        return false;
    }

    /**
     * What follows the first word of a fault may differ next time, unless that word alone means something else, or is unknown and other words begin
     * with it as well.
     */
    private static String pattern(String word, PrinterState state, List<String> all) {
        String whole = word.strip();
        int space = whole.indexOf(' ');
        if (state != PrinterState.FAULT || space <= 0) {
            return whole;
        }
        String first = whole.substring(0, space);
        boolean isOther =
                stateOf(first).filter(one -> one != PrinterState.FAULT).isPresent()
                        || (stateOf(first).isEmpty()
                                && all.stream().anyMatch(other -> !other.equals(word) && startsWith(other, first)));
        return isOther ? whole : first + "*";
    }

    private static boolean startsWith(String text, String beginning) {
        return text.strip().toLowerCase(Locale.ROOT).startsWith(beginning.toLowerCase(Locale.ROOT));
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
