package dev.lampwright.printer;

import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** What is known about several printers, by their names. Immutable. */
public final class Statuses {
    /** The name of the printer in a configuration that has only one and gives it none. */
    public static final String UNNAMED = "";

    /** Nothing has been heard from any printer. */
    public static final Statuses NOTHING_HEARD = new Statuses(Map.of());

    private final Map<String, PrinterStatus> byName;

    private Statuses(Map<String, PrinterStatus> byName) {
        this.byName = byName;
    }

    /**
     * What is known about a printer that has no name.
     *
     * @param status the status
     * @return its status and no other
     */
    public static Statuses of(PrinterStatus status) {
        return NOTHING_HEARD.with(UNNAMED, status);
    }

    /**
     * These with a new status of one printer.
     *
     * @param printer its name
     * @param status what is now known about it
     * @return new statuses
     */
    public Statuses with(String printer, PrinterStatus status) {
        Map<String, PrinterStatus> changed = new TreeMap<>(byName);
        changed.put(printer, status);
        return new Statuses(changed);
    }

    /**
     * What is known about one printer. Allocates nothing.
     *
     * @param printer its name
     * @return its status; nothing heard if there is no such printer
     */
    public PrinterStatus of(String printer) {
        PrinterStatus status = byName.get(printer);
        return status == null ? PrinterStatus.nothingHeard() : status;
    }

    /**
     * The printers that have been heard.
     *
     * @return their names, in alphabetical order
     */
    public Set<String> printers() {
        return Collections.unmodifiableSet(byName.keySet());
    }
}
