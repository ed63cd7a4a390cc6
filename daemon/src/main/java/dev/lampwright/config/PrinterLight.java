package dev.lampwright.config;

import dev.lampwright.signal.PrinterSignals;
import dev.lampwright.signal.Room;
import dev.lampwright.signal.Signal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * What the light needs to know about a printer.
 *
 * @param name its name; empty for a single printer without a name
 * @param silentAfter how long it may be quiet before its state is {@code silent}
 * @param room where it is, and what counts as hot there
 * @param own the signals of its user-defined readings, among those of all printers
 */
public record PrinterLight(String name, Duration silentAfter, Room room, List<Signal> own) {
    /** Keeps a copy of the list. */
    public PrinterLight {
        own = List.copyOf(own);
    }

    /**
     * The signals that can be followed by the names of printers, and how many printers are in each state.
     *
     * @param printers printers with names
     * @param own the signals of user-defined readings, of any of them
     * @return those that the printers have
     */
    static List<Signal> named(List<PrinterLight> printers, List<Signal> own) {
        int all = Signal.all().size() + own.size();
        List<Signal> named = new ArrayList<>();
        for (int which = 0; which < printers.size(); which++) {
            PrinterLight printer = printers.get(which);
            named.addAll(PrinterSignals.named(printer.name, which, all, Signal.all()));
            named.addAll(PrinterSignals.named(printer.name, which, all, printer.own));
        }
        named.addAll(PrinterSignals.counts(printers.size(), all));
        return named;
    }
}
