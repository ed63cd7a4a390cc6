package dev.lampwright.printer;

import java.util.Optional;

/** What to tell the log of a fault: once when it begins, and once more for each new text that the printer has for it. */
final class FaultWords {
    private FaultWords() {}

    /**
     * What one message says of a fault.
     *
     * @param before the status up to the message
     * @param after the status with the message in it
     * @return a line for the log; empty if there is nothing new
     */
    static Optional<String> line(PrinterStatus before, PrinterStatus after) {
        boolean begins = before.state() != PrinterState.FAULT;
        boolean news = !after.faultText().equals(before.faultText());
        if (after.state() != PrinterState.FAULT || !(begins || news)) {
            return Optional.empty();
        }
        return after.faultText()
                .map(text -> "the printer tells a fault: " + text)
                .or(() -> begins ? Optional.of("the printer tells a fault") : Optional.empty());
    }
}
