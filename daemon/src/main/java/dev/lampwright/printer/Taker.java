package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.payload.UnreadableException;

/** Takes the value that stands at a binding's place into the status. */
interface Taker {
    /**
     * Takes a value.
     *
     * @param before the status up to now
     * @param value what stands at the place; never a missing node
     * @param atNanos when it came
     * @return the new status
     * @throws UnreadableException if it is not the kind of value that is wanted
     */
    PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException;
}
