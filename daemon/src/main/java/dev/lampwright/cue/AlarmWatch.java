package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;

/** Passes the printer's faults, and what people do about them, to an alarm. For one thread; allocates nothing. */
public final class AlarmWatch {
    private final AlarmSequence sequence;
    private final String printer;
    private final Alarm alarm = new Alarm();
    private boolean fault;
    private long acknowledgements;
    private long resets;

    /**
     * Creates a watch that has seen no fault.
     *
     * @param sequence how a fault is shown
     */
    public AlarmWatch(AlarmSequence sequence) {
        this(sequence, "");
    }

    /**
     * Creates a watch on one of several printers that has seen no fault.
     *
     * @param sequence how a fault is shown
     * @param printer its name, by which its fault can be acknowledged separately
     */
    public AlarmWatch(AlarmSequence sequence, String printer) {
        this.sequence = sequence;
        this.printer = printer;
    }

    /**
     * Advances by one frame. Silence neither begins nor ends a fault: a printer that goes silent during a fault has not recovered.
     *
     * @param state the printer's effective state now
     * @param wishes what people have asked for
     * @return the state of the alarm
     */
    public AlarmState step(PrinterState state, Wishes wishes) {
        if (state != PrinterState.SILENT) {
            fault = state == PrinterState.FAULT;
        }
        boolean acknowledge = wishes.acknowledgements(printer) != acknowledgements;
        boolean reset = wishes.resets(printer) != resets;
        beginWith(wishes);
        return alarm.step(sequence, fault, acknowledge, reset);
    }

    /**
     * Ignores earlier asks, and reacts only to later ones.
     *
     * @param wishes what people have asked for
     */
    public void beginWith(Wishes wishes) {
        acknowledgements = wishes.acknowledgements(printer);
        resets = wishes.resets(printer);
    }

    /**
     * The state of the alarm.
     *
     * @return as of the last step
     */
    public AlarmState state() {
        return alarm.state();
    }

    /**
     * Whether the printer still has its fault.
     *
     * @return false without one, and once it is over; as of the last step
     */
    public boolean faultLasts() {
        return fault;
    }

    /**
     * Continues from the state of another watch.
     *
     * @param before the previous watch
     */
    public void takeOver(AlarmWatch before) {
        alarm.takeOver(before.alarm);
        fault = before.fault;
        acknowledgements = before.acknowledgements;
        resets = before.resets;
    }
}
