package dev.lampwright.tool.check;

import dev.lampwright.engine.InventedReadings;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Ten seconds of a printer that nobody has built, in steps of half a second: nothing is heard, then it heats up, then it prints from
 * beginning to end, then it cools and each event takes place. It goes through all states along the way.
 */
public final class MadeUpStatus {
    /** Length of a step, in ns. */
    public static final long STEP_NANOS = TimeUnit.MILLISECONDS.toNanos(500);
    /** How many steps there are. */
    public static final int STEPS = 20;

    private static final List<PrinterState> STATES = List.of(PrinterState.values());
    private static final int HEATING = 4;
    private static final int PRINTING = 10;
    private static final int EVENTS = 16;
    private static final double ROOM_C = 22;
    private static final double JOB_S = 3600;

    private MadeUpStatus() {}

    /**
     * Invents it for what a file binds.
     *
     * @param bindings the events, and the user-defined readings: numbers go through their range, heaters heat up and cool like the nozzle
     * @return one status for each step
     */
    public static List<PrinterStatus> all(Bindings bindings) {
        List<PrinterStatus> all = all(bindings.events().keySet());
        for (int step = HEATING; step < STEPS; step++) {
            double share = share(step, HEATING, EVENTS - 1);
            all.set(step, InventedReadings.in(all.get(step), bindings.own().keySet(), share));
        }
        return all;
    }

    /**
     * Invents it.
     *
     * @param events names of the events
     * @return one status for each step
     */
    public static List<PrinterStatus> all(Iterable<String> events) {
        List<PrinterStatus> all = new ArrayList<>();
        PrinterStatus status = PrinterStatus.nothingHeard();
        for (int step = 0; step < STEPS; step++) {
            long nanos = step * STEP_NANOS;
            if (step >= HEATING) {
                status = status.withState(STATES.get(step * STATES.size() / STEPS), nanos);
                double heat = share(step, HEATING, PRINTING - 1) - share(step, EVENTS - 1, STEPS - 1);
                status = heated(status, heat, step < EVENTS, nanos);
            }
            if (step >= PRINTING) {
                status = printed(status, share(step, PRINTING, EVENTS - 1), nanos);
            }
            if (step >= EVENTS) {
                for (String event : events) {
                    status = status.withEvent(event, nanos + STEP_NANOS / 2, nanos);
                }
            }
            all.add(status);
        }
        return all;
    }

    private static PrinterStatus heated(PrinterStatus before, double heat, boolean on, long nanos) {
        PrinterStatus status = heated(before, Quantity.BED_ACTUAL, Quantity.BED_SETPOINT, 60, heat, on, nanos);
        status = heated(status, Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_SETPOINT, 215, heat, on, nanos);
        return heated(status, Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_SETPOINT, 45, heat, on, nanos);
    }

    private static PrinterStatus heated(
            PrinterStatus before, Quantity actual, Quantity target, double hotC, double heat, boolean on, long nanos) {
        return before.withReading(target, on ? hotC : 0, nanos)
                .withReading(actual, ROOM_C + (hotC - ROOM_C) * heat, nanos);
    }

    private static PrinterStatus printed(PrinterStatus before, double share, long nanos) {
        return before.withReading(Quantity.JOB_PROGRESS, share, nanos)
                .withReading(Quantity.JOB_LEFT, JOB_S * (1 - share), nanos);
    }

    private static double share(int step, int first, int last) {
        return Math.max(0, Math.min(1, (double) (step - first) / (last - first)));
    }
}
