package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;

/** What makes signals move. */
interface SignalSource {
    /**
     * Takes what is new in a status; the same status again changes nothing.
     *
     * @param status the latest
     */
    void follow(PrinterStatus status);
}
