package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.WordPattern;
import dev.lampwright.upkeep.Printable;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes a word as the state. A JSON number, true or false counts as the word it is written as. A word that is bound to no state,
 * and JSON's null, leave the state as it was.
 */
final class StateTaker implements Taker {
    private static final Logger LOG = LoggerFactory.getLogger(StateTaker.class);
    private static final int MOST_CHARS = 200;
    private static final int MOST_UNKNOWN_WORDS = 32;

    private final List<Meaning> meanings;
    private final boolean alsoFaultText;
    private final Set<String> unknownWords = new HashSet<>();

    private record Meaning(WordPattern pattern, PrinterState state) {}

    /**
     * Prepares.
     *
     * @param words for each state
     * @param alsoFaultText whether a word for a fault is all that the printer has to say about it
     */
    StateTaker(Map<PrinterState, List<String>> words, boolean alsoFaultText) {
        this.alsoFaultText = alsoFaultText;
        this.meanings = words.entrySet().stream()
                .flatMap(entry ->
                        entry.getValue().stream().map(word -> new Meaning(new WordPattern(word), entry.getKey())))
                .toList();
    }

    @Override
    public PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException {
        if (value.isNull()) {
            return before.heardAt(atNanos);
        }
        String word = word(value);
        return state(word).map(state -> with(before, state, word, atNanos)).orElseGet(() -> before.heardAt(atNanos));
    }

    private PrinterStatus with(PrinterStatus before, PrinterState state, String word, long atNanos) {
        PrinterStatus after = before.withState(state, atNanos);
        return alsoFaultText ? after.withFaultText(state == PrinterState.FAULT ? word : "", atNanos) : after;
    }

    private static String word(JsonNode value) throws UnreadableException {
        String word = value.asText().strip();
        if (word.isEmpty() || word.length() > MOST_CHARS) {
            throw new UnreadableException("the value is no word");
        }
        return word;
    }

    private Optional<PrinterState> state(String word) {
        Optional<PrinterState> state = meanings.stream()
                .filter(meaning -> meaning.pattern.matches(word))
                .map(Meaning::state)
                .findFirst();
        if (state.isEmpty()) {
            tellUnknown(word);
        }
        return state;
    }

    private void tellUnknown(String word) {
        if (unknownWords.size() < MOST_UNKNOWN_WORDS && unknownWords.add(word)) {
            LOG.warn(
                    "state: the printer says \"{}\", which is bound to no state, and the state stays as it was; name the word"
                            + " under [printer.state] if it matters",
                    Printable.beginning(word, 60));
        }
    }
}
