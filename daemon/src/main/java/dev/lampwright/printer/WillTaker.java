package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.WordPattern;
import java.util.List;

/** Takes a word as saying that the printer is gone, or that it is there. JSON's null changes nothing. */
final class WillTaker implements Taker {
    private final List<WordPattern> gone;

    WillTaker(List<String> gone) {
        this.gone = gone.stream().map(WordPattern::new).toList();
    }

    @Override
    public PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException {
        if (value.isContainerNode()) {
            throw new UnreadableException("the value is no word");
        }
        if (value.isNull()) {
            return before.heardAt(atNanos);
        }
        String word = value.asText().strip();
        return gone.stream().anyMatch(pattern -> pattern.matches(word))
                ? before.gone(atNanos)
                : before.back().heardAt(atNanos);
    }
}
