package dev.lampwright.engine;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import java.util.Collection;

/** An invented printer in the midst of its job, to see what light a state usually puts on. */
public final class MidJob {
    private MidJob() {}

    /**
     * What it reports. Everything is known and half done; nothing has been heard if that is the state.
     *
     * @param state what it does
     * @param own what the file has names of its own for
     * @return a status of the time 0
     */
    public static PrinterStatus status(PrinterState state, Collection<OwnQuantity> own) {
        if (state == PrinterState.SILENT) {
            return PrinterStatus.nothingHeard();
        }
        PrinterStatus made = PrinterStatus.nothingHeard()
                .withState(state, 0)
                .withReading(Quantity.BED_SETPOINT, 60, 0)
                .withReading(Quantity.BED_ACTUAL, 45, 0)
                .withReading(Quantity.NOZZLE_SETPOINT, 215, 0)
                .withReading(Quantity.NOZZLE_ACTUAL, 120, 0)
                .withReading(Quantity.JOB_PROGRESS, 0.5, 0)
                .withReading(Quantity.JOB_LEFT, 1800, 0);
        return InventedReadings.in(made, own, 0.5);
    }
}
