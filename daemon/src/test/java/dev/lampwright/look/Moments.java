package dev.lampwright.look;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signals;

/** Moments to draw at. */
final class Moments {
    private static final double ROOM_C = 22;

    private Moments() {}

    /** Some time after a look was switched on; every signal is unknown. */
    static Moment after(double seconds) {
        return moment(PrinterStatus.nothingHeard(), seconds);
    }

    /** When this much of the job is done. */
    static Moment done(double share) {
        return moment(PrinterStatus.nothingHeard().withReading(Quantity.JOB_PROGRESS, share, 0), 0);
    }

    private static Moment moment(PrinterStatus status, double seconds) {
        Signals signals = new Signals(ROOM_C);
        signals.follow(status);
        Moment moment = new Moment(signals);
        moment.moveTo(Math.round(seconds * 1e9), 0);
        return moment;
    }
}
