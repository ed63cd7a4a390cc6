package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.WordPattern;
import java.util.List;

/** Takes a word as the beginning or the end of an event. Any other word, and JSON's null, changes nothing. */
final class EventTaker implements Taker {
    private final String name;
    private final List<WordPattern> begin;
    private final List<WordPattern> end;
    private final long lastsNanos;

    EventTaker(String name, EventBinding binding) {
        this.name = name;
        begin = patterns(binding.begin());
        end = patterns(binding.end());
        lastsNanos = binding.lasts().toNanos();
    }

    @Override
    public PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException {
        if (value.isContainerNode()) {
            throw new UnreadableException("the value is no word");
        }
        String word = value.asText().strip();
        if (matches(begin, word)) {
            return before.withEvent(name, atNanos + lastsNanos, atNanos);
        }
        return matches(end, word) ? before.withEvent(name, atNanos, atNanos) : before.heardAt(atNanos);
    }

    private static List<WordPattern> patterns(List<String> words) {
        return words.stream().map(WordPattern::new).toList();
    }

    private static boolean matches(List<WordPattern> patterns, String word) {
        return patterns.stream().anyMatch(pattern -> pattern.matches(word));
    }
}
