package dev.lampwright.signal;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Reading;

/**
 * The job: its pace, and how long it still takes. The printer's own figure counts if it reports the time left; otherwise its progress does.
 * The time stops while the job does.
 */
final class Job implements Sources.Source {
    private final JobPace pace = new JobPace();
    private final StopClock clock = new StopClock();
    private final Glide speed = new Glide();
    private final Countdown left = new Countdown(clock);
    private PrinterState state = PrinterState.SILENT;
    private Reading progress = Reading.UNKNOWN;
    private Reading told = Reading.UNKNOWN;
    private double paceEnd = Double.NaN;

    @Override
    public void follow(PrinterStatus status) {
        if (status.state() != state) {
            change(status);
        }
        Reading newProgress = status.reading(Quantity.JOB_PROGRESS);
        Reading newTold = status.reading(Quantity.JOB_LEFT);
        boolean isTold = newTold.differsFrom(told);
        told = newTold;
        if (newProgress.differsFrom(progress)) {
            progress = newProgress;
            follow(newProgress);
        }
        if (isTold && newTold.known()) {
            left.to(clock.at(newTold.atNanos()) + newTold.value(), newTold.atNanos());
        } else if (!newTold.known()) {
            left.to(paceEnd, Math.max(newTold.atNanos(), progress.atNanos()));
        }
    }

    private void change(PrinterStatus status) {
        state = status.state();
        clock.run(state == PrinterState.PRINTING, status.heardAtNanos());
        if (!isUnderWay()) {
            pace.forget();
            paceEnd = Double.NaN;
        }
        speed.to(pacePerHour(), status.heardAtNanos());
    }

    private boolean isUnderWay() {
        return state == PrinterState.PRINTING || state == PrinterState.HELD || state == PrinterState.FAULT;
    }

    private void follow(Reading newest) {
        if (state == PrinterState.PRINTING) {
            paceEnd = pace.take(newest.value(), clock.at(newest.atNanos()));
        }
        speed.to(pacePerHour(), newest.atNanos());
    }

    private double pacePerHour() {
        return state == PrinterState.HELD ? 0 : pace.perHour();
    }

    /** Its pace, as share of the job per hour; 0 while it is paused. */
    Track speed() {
        return speed;
    }

    /** Time until it is done, in s. */
    Track left() {
        return left;
    }
}
