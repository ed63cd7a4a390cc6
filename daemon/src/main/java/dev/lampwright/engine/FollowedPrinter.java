package dev.lampwright.engine;

import dev.lampwright.config.PrinterLight;
import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.AlarmWatch;
import dev.lampwright.cue.Wishes;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signals;

/** What the light follows for one printer: its status, its signals, its effective state, and the alarm for its faults. For one thread. */
final class FollowedPrinter {
    private final String name;
    private final long silentAfterNanos;
    private final Signals signals;
    private final AlarmWatch alarm;
    private PrinterStatus status = PrinterStatus.nothingHeard();
    private PrinterState state = PrinterState.SILENT;

    /**
     * Starts with a printer that has not been heard yet.
     *
     * @param light what light needs to know about it
     * @param signals its signals
     * @param sequence how its faults are shown
     */
    FollowedPrinter(PrinterLight light, Signals signals, AlarmSequence sequence) {
        name = light.name();
        silentAfterNanos = light.silentAfter().toNanos();
        this.signals = signals;
        alarm = new AlarmWatch(sequence, name);
    }

    String name() {
        return name;
    }

    Signals signals() {
        return signals;
    }

    /** Its status, as of the last frame. */
    PrinterStatus status() {
        return status;
    }

    /** What it is doing, as of the last frame. */
    PrinterState state() {
        return state;
    }

    /** The state of its alarm, as of the last frame. */
    AlarmState alarm() {
        return alarm.state();
    }

    /** Whether it still has its fault, as of the last frame. */
    boolean faultLasts() {
        return alarm.faultLasts();
    }

    /**
     * Advances by a frame.
     *
     * @param newest its status
     * @param nanos the time
     * @param wishes what people have asked for
     */
    void moveTo(PrinterStatus newest, long nanos, Wishes wishes) {
        status = newest;
        signals.follow(newest);
        state = newest.stateAt(nanos, silentAfterNanos);
        alarm.step(state, wishes);
    }

    /** How long its state stays the same, in ns, if nothing new is heard. */
    long stillFor(long nanos) {
        return status.stateStillFor(nanos, silentAfterNanos);
    }

    /** Carries over the alarm of the same printer. */
    void takeOver(FollowedPrinter before) {
        alarm.takeOver(before.alarm);
    }

    /** Ignores earlier asks: they were meant for others. */
    void beginWith(Wishes wishes) {
        alarm.beginWith(wishes);
    }
}
