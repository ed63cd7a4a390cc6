package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;
import java.util.List;

/** Which of several printers needs attention most. */
public final class Pressing {
    private static final List<AlarmState> ALARMS =
            List.of(AlarmState.ALERT, AlarmState.ACKNOWLEDGED, AlarmState.RINGBACK, AlarmState.NORMAL);
    private static final List<PrinterState> STATES = List.of(
            PrinterState.FAULT,
            PrinterState.HELD,
            PrinterState.STOPPED,
            PrinterState.DONE,
            PrinterState.PRINTING,
            PrinterState.WARMING,
            PrinterState.IDLE,
            PrinterState.SILENT);

    private Pressing() {}

    /**
     * The position of a printer in order of urgency.
     *
     * @param alarm the state of its alarm
     * @param state what it is doing
     * @return 0 or more; lower is more urgent
     */
    public static int rank(AlarmState alarm, PrinterState state) {
        return STATES.size() * ALARMS.indexOf(alarm) + STATES.indexOf(state);
    }
}
