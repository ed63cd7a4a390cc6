package dev.lampwright.config;

import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The section {@code [printer.state]}, or several of them in an array. */
final class StateSection {
    /** The states by word. */
    static final Map<String, PrinterState> STATES = Words.of(PrinterState.values(), PrinterState::word);

    private static final String WANTED_WORDS =
            "give the printer's words for it in an array, for instance [\"RUN\", \"RESUME*\"]";

    /** What the printer is doing. */
    static final Section SECTION = new Section(
                    "printer.state", "what the printer is doing, and its words for it", words())
            .after(SourceKeys.KEYS);

    private StateSection() {}

    private static List<Key<?>> words() {
        return STATES.values().stream().<Key<?>>map(StateSection::words).toList();
    }

    private static Key<?> words(PrinterState state) {
        Key<?> key = Key.own(
                state.word(),
                "array of words; `*` is any characters, case does not count; whole numbers, true and false too");
        String example = "[\"" + state.name() + "\"]";
        String help = "the printer's words for it";
        return state == PrinterState.SILENT ? key.comment(example, help) : key.example(example, help);
    }

    static List<Bindings.OfState> read(List<Table> tables) {
        return tables.stream().map(StateSection::read).toList();
    }

    private static Bindings.OfState read(Table place) {
        Table table = place.as(SECTION);
        Map<PrinterState, List<String>> words = words(table);
        if (words.isEmpty() && table.right()) {
            table.mistake("printing", "is missing, and so is every other state", WANTED_WORDS);
        }
        noteRepeated(table, words);
        noteCatchAll(table, words);
        return new Bindings.OfState(SourceKeys.read(table), words);
    }

    /** In the order of the file, which decides if more than one state has a matching word. */
    private static Map<PrinterState, List<String>> words(Table table) {
        STATES.keySet().forEach(table::has);
        Map<PrinterState, List<String>> words = new LinkedHashMap<>();
        table.keys().stream()
                .filter(STATES::containsKey)
                .forEach(key -> words.put(STATES.get(key), List.copyOf(table.words(key, WANTED_WORDS))));
        return Collections.unmodifiableMap(words);
    }

    /** A word that matches everything leaves nothing for the states after it, since the first match counts. */
    private static void noteCatchAll(Table table, Map<PrinterState, List<String>> words) {
        List<PrinterState> states = List.copyOf(words.keySet());
        for (int i = 0; i < states.size() - 1; i++) {
            PrinterState state = states.get(i);
            if (words.get(state).stream().anyMatch(word -> word.chars().allMatch(c -> c == '*'))) {
                String behind = states.subList(i + 1, states.size()).stream()
                        .map(PrinterState::word)
                        .collect(Collectors.joining(" and "));
                table.mistake(
                        state.word(),
                        "has \"*\", which is every word and leaves none for " + behind + " below it",
                        "put it below the others, or leave it out");
                return;
            }
        }
    }

    private static void noteRepeated(Table table, Map<PrinterState, List<String>> words) {
        Map<String, PrinterState> seen = new HashMap<>();
        words.forEach((state, stateWords) -> stateWords.forEach(word -> {
            PrinterState earlier = seen.putIfAbsent(word.toLowerCase(Locale.ROOT), state);
            if (earlier != null) {
                String what = "has " + Wording.quoted(word) + ", which " + earlier.word() + " has already";
                table.mistake(state.word(), what, "give each word once; case does not count");
            }
        }));
    }
}
