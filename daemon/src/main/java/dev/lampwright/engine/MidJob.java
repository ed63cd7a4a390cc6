package dev.lampwright.engine;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import java.util.Collection;

/** An invented printer in the middle of its job, to see the usual light of a state. */
public final class MidJob {
    private MidJob() {}

    /**
     * What it reports. Everything is known and half done, unless the state means that nothing has been heard.
     *
     * @param state what it is doing
     * @param own the user-defined readings
     * @return a status at time 0
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
