package dev.lampwright.engine;

import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import java.util.Collection;

/** Invented values for user-defined readings. */
public final class InventedReadings {
    private InventedReadings() {}

    /**
     * Adds them to an invented status.
     *
     * @param made with readings of the nozzle, which every user-defined heater gets as well
     * @param own the user-defined readings
     * @param share position of numbers within their range, 0 to 1
     * @return another status, in which all of them have just come
     */
    public static PrinterStatus in(PrinterStatus made, Collection<OwnQuantity> own, double share) {
        long nanos = made.heardAtNanos();
        PrinterStatus status = made;
        for (OwnQuantity quantity : own) {
            status = status.withOwn(quantity.key(), quantity.at(share), nanos);
        }
        for (OwnHeater heater : OwnHeater.among(own)) {
            status = status.withOwn(heater.actualKey(), made.value(Quantity.NOZZLE_ACTUAL), nanos)
                    .withOwn(heater.setpointKey(), made.value(Quantity.NOZZLE_SETPOINT), nanos);
        }
        return status;
    }
}
