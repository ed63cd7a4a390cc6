package dev.lampwright.shelf;

import java.util.Comparator;

/**
 * A printer on the shelf.
 *
 * @param name its name; empty if it is the only one of its rig
 * @param standing how much it needs a person
 * @param doing what it does
 */
public record PrinterRow(String name, Standing standing, RigStatus.Doing doing) {
    private static final double MINUTE = 60;

    /** Who needs a person first, then who is ready soonest, then by name. */
    static final Comparator<PrinterRow> ORDER = Comparator.comparing(PrinterRow::standing)
            .thenComparingDouble(PrinterRow::soonest)
            .thenComparing(PrinterRow::name, NaturalOrder.OF_NAMES);

    /**
     * To the minute, so that printers that are ready at nearly the same time do not keep swapping places. Comparing puts NaN, for an unknown
     * time, last.
     */
    double soonest() {
        return standing == Standing.WORKING ? Math.rint(doing.leftSeconds() / MINUTE) : 0;
    }
}
