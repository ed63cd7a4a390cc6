package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;

/** What is going on, for the conditions of cues. Made once and moved on. */
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
     * Makes a situation in which nothing has been heard.
     *
     * @param signals what light can follow
     */
    public Situation(Signals signals) {
        this(signals, "", new PrinterState[] {PrinterState.SILENT});
    }

    /**
     * Makes a situation of one of several printers, in which nothing has been heard.
     *
     * @param signals what light can follow
     * @param view name of the part of the strip that it is for; empty for the whole
     * @param printers the states of all printers as they count now; the caller keeps them up to date
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

    /** What each printer is doing; not to be changed. */
    PrinterState[] printers() {
        return printers;
    }

    /**
     * Moves on.
     *
     * @param newStatus what is known of the printer
     * @param newState the state as it counts now
     * @param nowNanos the time
     */
    public void moveTo(PrinterStatus newStatus, PrinterState newState, long nowNanos) {
        status = newStatus;
        state = newState;
        nanos = nowNanos;
    }

    /**
     * Takes what people have asked for.
     *
     * @param newWishes what they ask for now
     * @param newAlarm where the alarm stands
     */
    public void take(Wishes newWishes, AlarmState newAlarm) {
        wishes = newWishes;
        alarm = newAlarm;
    }

    /**
     * What people have asked for.
     *
     * @return as taken last
     */
    Wishes wishes() {
        return wishes;
    }

    /**
     * Where the alarm stands.
     *
     * @return as taken last
     */
    AlarmState alarm() {
        return alarm;
    }

    /**
     * The state as it counts now.
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
     * @return the value, NaN if it is unknown
     */
    double value(Signal signal) {
        return signals.value(signal, nanos);
    }

    /** How long a signal keeps its value, in ns, if nothing new is heard. */
    long stillFor(Signal signal) {
        return signals.stillFor(signal, nanos);
    }

    /** How long it stays so that an event is going on, or not, in ns, if nothing new is heard. */
    long eventStillFor(String name) {
        return status.eventStillFor(name, nanos);
    }

    /**
     * Whether an event is going on.
     *
     * @param name its name in the configuration
     * @return false also if there is none of that name
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
