package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;

/** Tells an alarm of the printer's faults, and of what people do about them. For one thread; allocates nothing. */
public final class AlarmWatch {
    private final AlarmSequence sequence;
    private final String printer;
    private final Alarm alarm = new Alarm();
    private boolean fault;
    private long acknowledgements;
    private long resets;

    /**
     * Makes a watch that has seen no fault.
     *
     * @param sequence how a fault is shown
     */
    public AlarmWatch(AlarmSequence sequence) {
        this(sequence, "");
    }

    /**
     * Makes a watch on one of several printers that has seen no fault.
     *
     * @param sequence how a fault is shown
     * @param printer its name, by which its fault can be acknowledged apart from others
     */
    public AlarmWatch(AlarmSequence sequence, String printer) {
        this.sequence = sequence;
        this.printer = printer;
    }

    /**
     * Moves on by one frame. Silence neither begins nor ends a fault: a printer that falls silent in a fault is not well again.
     *
     * @param state the printer's state as it counts now
     * @param wishes what people have asked for
     * @return where the alarm stands
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
     * Ignores what was asked for up to now, and reacts only to what is asked for after that.
     *
     * @param wishes what people have asked for
     */
    public void beginWith(Wishes wishes) {
        acknowledgements = wishes.acknowledgements(printer);
        resets = wishes.resets(printer);
    }

    /**
     * Where the alarm stands.
     *
     * @return as the last step left it
     */
    public AlarmState state() {
        return alarm.state();
    }

    /**
     * Whether the printer still has its fault.
     *
     * @return false without one, and once it is over; as the last step left it
     */
    public boolean faultLasts() {
        return fault;
    }

    /**
     * Goes on where another watch stands.
     *
     * @param before the watch up to now
     */
    public void takeOver(AlarmWatch before) {
        alarm.takeOver(before.alarm);
        fault = before.fault;
        acknowledgements = before.acknowledgements;
        resets = before.resets;
    }
}
