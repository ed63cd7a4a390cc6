package dev.lampwright.tool.replay;

import dev.lampwright.engine.InventedReadings;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusLines.Entry;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A timeline that moves every signal, for looking at a look: bed, nozzle and chamber heat up from the temperature of the room, the nozzle
 * first, while the job runs from beginning to end.
 */
public final class SignalSweep {
    private static final long STEP_NANOS = TimeUnit.MILLISECONDS.toNanos(250);
    private static final double NOZZLE_HOT_AT = 0.5;
    private static final double BED_HOT_AT = 0.75;

    private SignalSweep() {}

    /**
     * Invents it.
     *
     * @param seconds its length, above 0
     * @param ambientC temperature of the room, in °C
     * @param own user-defined readings: numbers go through their range, heaters heat up
     * @return the timeline
     */
    public static Timeline timeline(double seconds, double ambientC, Collection<OwnQuantity> own) {
        List<Entry> entries = new ArrayList<>();
        PrinterStatus status = PrinterStatus.nothingHeard();
        long end = Math.round(seconds * TimeUnit.SECONDS.toNanos(1));
        for (long nanos = 0; nanos <= end; nanos += STEP_NANOS) {
            double share = (double) nanos / end;
            status = status.withState(PrinterState.PRINTING, nanos)
                    .withReading(Quantity.JOB_PROGRESS, share, nanos)
                    .withReading(Quantity.JOB_LEFT, seconds * (1 - share), nanos);
            status = heated(status, Heater.NOZZLE, ambientC, share / NOZZLE_HOT_AT, nanos);
            status = heated(status, Heater.BED, ambientC, share / BED_HOT_AT, nanos);
            status = heated(status, Heater.CHAMBER, ambientC, share / BED_HOT_AT, nanos);
            status = InventedReadings.in(status, own, share);
            entries.add(new Entry(Optional.empty(), nanos, status, 0));
        }
        return Timeline.of("sweep", entries);
    }

    private record Heater(Quantity actual, Quantity setpoint, double hotterBy) {
        static final Heater NOZZLE = new Heater(Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_SETPOINT, 190);
        static final Heater BED = new Heater(Quantity.BED_ACTUAL, Quantity.BED_SETPOINT, 40);
        static final Heater CHAMBER = new Heater(Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_SETPOINT, 20);
    }

    private static PrinterStatus heated(
            PrinterStatus status, Heater heater, double ambientC, double share, long nanos) {
        return status.withReading(heater.setpoint, ambientC + heater.hotterBy, nanos)
                .withReading(heater.actual, ambientC + heater.hotterBy * Math.min(1, share), nanos);
    }
}
