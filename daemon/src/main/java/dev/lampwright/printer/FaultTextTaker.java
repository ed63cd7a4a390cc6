package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.payload.UnreadableException;

/** Takes a text as the printer's own words for what is wrong. Empty text, and JSON's null, mean that there is none. */
final class FaultTextTaker implements Taker {
    @Override
    public PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException {
        if (value.isContainerNode()) {
            throw new UnreadableException("the value is no text");
        }
        return before.withFaultText(value.isNull() ? "" : value.asText(), atNanos);
    }
}
