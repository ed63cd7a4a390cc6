package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;
import java.time.Duration;

/**
 * A job.
 *
 * @param began when it began, or when it was first seen
 * @param beganUnseen whether it was already running then
 * @param until when it ended, or until when it was seen
 * @param endUnseen whether it ended earlier, unseen
 * @param end how it ended
 * @param state what the printer last reported during the job: warming, printing, held or fault
 * @param progress the last share of it that was reported, 0 to 1; NaN for unknown
 * @param unwatchedMillis for how long during the job the printer was silent, or lampwright was not running, in ms
 */
public record PastJob(
        Stamp began,
        boolean beganUnseen,
        Stamp until,
        boolean endUnseen,
        JobEnd end,
        PrinterState state,
        double progress,
        long unwatchedMillis) {
    /** A new one. */
    static PastJob began(Stamp at, boolean unseen, PrinterState state, double progress) {
        return new PastJob(at, unseen, at, false, JobEnd.RUNNING, state, progress, 0);
    }

    /** The same, seen again. */
    PastJob seen(Stamp at, PrinterState newState, double newProgress) {
        double known = Double.isNaN(newProgress) ? progress : newProgress;
        return new PastJob(began, beganUnseen, at, false, end, newState, known, unwatchedMillis);
    }

    /** The same, with a part that was not observed. */
    PastJob unwatched(long millis) {
        return new PastJob(began, beganUnseen, until, false, end, state, progress, unwatchedMillis + millis);
    }

    /** The same at its end. */
    PastJob ended(JobEnd how, Stamp at, boolean unseen) {
        return new PastJob(began, beganUnseen, at, unseen, how, state, progress, unwatchedMillis);
    }

    /** The same with times on the wall clock. */
    PastJob wall(long wallAhead) {
        return new PastJob(
                began.wall(wallAhead),
                beganUnseen,
                until.wall(wallAhead),
                endUnseen,
                end,
                state,
                progress,
                unwatchedMillis);
    }

    /**
     * How long it took, or has taken so far: at least that if its beginning was not seen, at most that if its end was not.
     *
     * @return zero or more
     */
    public Duration took() {
        return Duration.ofMillis(Math.max(0, until.millis() - began.millis()));
    }
}
