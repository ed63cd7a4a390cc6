package dev.lampwright.shelf;

import java.util.Comparator;
import java.util.List;

/**
 * A rig on the shelf.
 *
 * @param status what it reported last
 * @param standing how much it needs attention
 * @param heardSeconds how long ago that was, in s; NaN if unknown
 * @param twice whether several daemons report under its prefix
 */
public record ShelfRow(RigStatus status, Standing standing, double heardSeconds, boolean twice) {
    /** Who needs a person first, then who is ready soonest, then by name, where 2 comes before 10. */
    public static final Comparator<ShelfRow> ORDER = Comparator.comparing(ShelfRow::standing)
            .thenComparingDouble(ShelfRow::soonest)
            .thenComparing(row -> row.status().rig(), NaturalOrder.OF_NAMES)
            .thenComparing(row -> row.status().prefix(), NaturalOrder.OF_NAMES);

    /**
     * A rig of this process.
     *
     * @param status what it reports now
     * @return its row
     */
    public static ShelfRow here(RigStatus status) {
        return new ShelfRow(status, Standing.of(status, false), 0, false);
    }

    /**
     * The printers of a rig with several.
     *
     * @return who needs a person most first; empty if there is one without a name, or the rig is not there
     */
    public List<PrinterRow> printers() {
        return standing.isThere() && !status.printers().isEmpty()
                ? status.printers().stream()
                        .map(printer -> new PrinterRow(printer.name(), Standing.of(printer.doing()), printer.doing()))
                        .sorted(PrinterRow.ORDER)
                        .toList()
                : List.of();
    }

    /**
     * What there is to count: the printers of a rig with several, else the rig itself.
     *
     * @return at least one, who needs a person most first
     */
    public List<PrinterRow> each() {
        List<PrinterRow> printers = printers();
        return printers.isEmpty() ? List.of(new PrinterRow("", standing, status.doing())) : printers;
    }

    /** Of a rig with several printers, that of the one by which it stands where it does. */
    private double soonest() {
        return standing == Standing.WORKING ? each().get(0).soonest() : 0;
    }
}
