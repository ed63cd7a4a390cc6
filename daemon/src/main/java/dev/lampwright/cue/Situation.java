package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;

/** The current situation, for the conditions of cues. Created once and advanced. */
public final class Situation {
    private final Signals signals;
    private final String view;
    private final PrinterState[] printers;
    private PrinterStatus status = PrinterStatus.nothingHeard();
    private PrinterState state = PrinterState.SILENT;
    private Wishes wishes = Wishes.NONE;
    private AlarmState alarm = AlarmState.NORMAL;
    private long nanos;

    /**
     * Creates a situation in which nothing has been heard.
     *
     * @param signals what light can follow
     */
    public Situation(Signals signals) {
        this(signals, "", new PrinterState[] {PrinterState.SILENT});
    }

    /**
     * Creates a situation for one of several printers, in which nothing has been heard.
     *
     * @param signals what light can follow
     * @param view name of the part of the strip that it is for; empty for the whole
     * @param printers the effective states of all printers; the caller keeps them up to date
     */
    public Situation(Signals signals, String view, PrinterState[] printers) {
        this.signals = signals;
        this.view = view;
        this.printers = printers;
    }

    /** The part of the strip that this is for. */
    String view() {
        return view;
    }

    /** What each printer is doing; must not be modified. */
    PrinterState[] printers() {
        return printers;
    }

    /**
     * Advances to another frame.
     *
     * @param newStatus what is known about the printer
     * @param newState the effective state now
     * @param nowNanos the time
     */
    public void moveTo(PrinterStatus newStatus, PrinterState newState, long nowNanos) {
        status = newStatus;
        state = newState;
        nanos = nowNanos;
    }

    /**
     * Sets what people have asked for.
     *
     * @param newWishes what they ask for now
     * @param newAlarm the state of the alarm
     */
    public void take(Wishes newWishes, AlarmState newAlarm) {
        wishes = newWishes;
        alarm = newAlarm;
    }

    /**
     * What people have asked for.
     *
     * @return as last set
     */
    Wishes wishes() {
        return wishes;
    }

    /**
     * The state of the alarm.
     *
     * @return as last set
     */
    AlarmState alarm() {
        return alarm;
    }

    /**
     * The effective state now.
     *
     * @return silent if nothing has been heard for long
     */
    PrinterState state() {
        return state;
    }

    /**
     * A signal's value now.
     *
     * @param signal which
     * @return the value, NaN if unknown
     */
    double value(Signal signal) {
        return signals.value(signal, nanos);
    }

    /** How long a signal keeps its value, in ns, if nothing new is heard. */
    long stillFor(Signal signal) {
        return signals.stillFor(signal, nanos);
    }

    /** How long the result of {@link #event} stays the same, in ns, if nothing new is heard. */
    long eventStillFor(String name) {
        return status.eventStillFor(name, nanos);
    }

    /**
     * Whether an event is going on.
     *
     * @param name its name in the configuration
     * @return false also if there is none with that name
     */
    boolean event(String name) {
        return status.eventAt(name, nanos);
    }

    /**
     * The time.
     *
     * @return ns
     */
    long nanos() {
        return nanos;
    }
}
