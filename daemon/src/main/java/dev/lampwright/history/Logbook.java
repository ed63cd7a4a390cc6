package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.List;

/**
 * Derives jobs, faults and states from what the printer is seen doing. Holds a fixed number of each, however long it runs. Nothing in it
 * reads a clock, so the same sightings give the same account. For one thread.
 */
final class Logbook {
    /** The maximum number of jobs kept. */
    static final int MOST_JOBS = 200;
    /** The maximum number of faults kept. */
    static final int MOST_FAULTS = 200;

    /**
     * The longest gap in observation after which it still counts as the same job if its progress has not gone back, in ms. Our own choice.
     */
    static final long LONGEST_GAP_MILLIS = 12 * 3_600_000L;

    /** The same if the progress is unknown. */
    static final long LONGEST_BLIND_GAP_MILLIS = 10 * 60_000L;

    /** Printers round their progress. */
    private static final double ROUNDING = 0.01;

    private final List<PastJob> jobs = new ArrayList<>();
    private final List<PastFault> faults = new ArrayList<>();
    private final Spans spans = new Spans();
    private final Curves curves = new Curves();
    private PrinterState last = PrinterState.SILENT;
    private long wallAhead;
    private long nowMillis;
    private long changes;
    /** How many of the newest faults can still be acknowledged. */
    private int unacknowledged;
    /** Whether the printer has not been observed since the newest job or fault was last seen. */
    private boolean gap = true;

    /**
     * Restores what earlier runs have seen. Call this before anything else.
     *
     * @param before what they kept
     */
    void restore(Account before) {
        jobs.addAll(before.jobs());
        faults.addAll(before.faults());
        spans.restore(before.spans());
        curves.restore(before.curves());
        unacknowledged = openFault() ? 1 : 0;
    }

    /**
     * Sets the offset of the wall clock.
     *
     * @param ahead ms since 1970 minus ms of this run's time
     */
    void wallAhead(long ahead) {
        wallAhead = ahead;
    }

    /**
     * Records what the printer is doing. Call this whenever that changes, and about once a second.
     *
     * @param atMillis time of this run, in ms; a time before the last one counts as the last one
     * @param seen what it is doing
     */
    void see(long atMillis, Sighting seen) {
        nowMillis = Math.max(nowMillis, atMillis);
        Stamp at = new Stamp(nowMillis, true);
        PrinterState state = seen.state();
        boolean isNew = state != last;
        spans.see(at, state);
        if (state == PrinterState.SILENT) {
            gap = true;
        } else {
            seeJob(at, seen);
            seeFault(at, seen);
            gap = false;
        }
        last = state;
        if (isNew) {
            changes++;
        }
    }

    private void seeJob(Stamp at, Sighting seen) {
        if (!openJob()) {
            begin(at, seen);
            return;
        }
        PastJob job = jobs.get(jobs.size() - 1);
        long gapMillis = millis(at) - millis(job.until());
        if (gap && !isStill(job, seen, gapMillis)) {
            job(job.ended(JobEnd.UNSEEN, job.until(), true));
            begin(at, seen);
            return;
        }
        if (gap) {
            job = job.unwatched(Math.max(0, gapMillis));
        }
        switch (seen.state()) {
            case DONE -> job(job.ended(JobEnd.DONE, at, gap));
            case STOPPED -> job(job.ended(ofFault(job, JobEnd.STOPPED), at, gap));
            case IDLE -> job(job.ended(ofFault(job, JobEnd.UNTOLD), at, gap));
            case FAULT -> job(job.seen(at, seen.state(), Double.NaN));
            default -> job(job.seen(at, seen.state(), seen.progress()));
        }
    }

    private static JobEnd ofFault(PastJob job, JobEnd otherwise) {
        return job.state() == PrinterState.FAULT ? JobEnd.FAULT : otherwise;
    }

    private void begin(Stamp at, Sighting seen) {
        if (isWork(seen.state())) {
            jobs.add(PastJob.began(at, gap, seen.state(), seen.progress()));
            if (jobs.size() > MOST_JOBS) {
                jobs.remove(0);
            }
            changes++;
        }
    }

    /**
     * Whether it is still the job from before the gap in observation. If the printer is idle afterwards, it did not report how the job
     * ended. If it is working, it may have started another job: its progress shows that, or else the gap is too short for it. A negative
     * time comes from a wall clock that has not been set yet, so it is ignored.
     */
    private static boolean isStill(PastJob job, Sighting seen, long gapMillis) {
        if (seen.state() == PrinterState.IDLE || gapMillis > LONGEST_GAP_MILLIS) {
            return false;
        }
        if (!isWork(seen.state())) {
            return gapMillis >= 0;
        }
        boolean known = !Double.isNaN(job.progress()) && !Double.isNaN(seen.progress());
        return known
                ? seen.progress() >= job.progress() - ROUNDING
                : gapMillis >= 0 && gapMillis <= LONGEST_BLIND_GAP_MILLIS;
    }

    private static boolean isWork(PrinterState state) {
        return state == PrinterState.WARMING || state == PrinterState.PRINTING || state == PrinterState.HELD;
    }

    private boolean openJob() {
        return !jobs.isEmpty() && jobs.get(jobs.size() - 1).end() == JobEnd.RUNNING;
    }

    private void job(PastJob newest) {
        if (newest.end() != JobEnd.RUNNING) {
            changes++;
        }
        jobs.set(jobs.size() - 1, newest);
    }

    private void seeFault(Stamp at, Sighting seen) {
        boolean fault = seen.state() == PrinterState.FAULT;
        if (openFault() && !fault) {
            fault(faults.get(faults.size() - 1).over(at, gap));
        } else if (openFault()) {
            fault(faults.get(faults.size() - 1).said(seen.faultText()));
        } else if (fault) {
            faults.add(PastFault.began(at, seen.faultText()));
            unacknowledged = Math.min(MOST_FAULTS, unacknowledged + 1);
            if (faults.size() > MOST_FAULTS) {
                faults.remove(0);
            }
            changes++;
        }
    }

    private boolean openFault() {
        return !faults.isEmpty() && faults.get(faults.size() - 1).over().isEmpty();
    }

    private void fault(PastFault newest) {
        if (!newest.equals(faults.set(faults.size() - 1, newest))) {
            changes++;
        }
    }

    /**
     * Records an acknowledgement: of the newest fault, and of earlier ones for which the alarm was still on.
     *
     * @param who and when
     */
    void acknowledge(Acknowledgement who) {
        for (int i = faults.size() - unacknowledged; i < faults.size(); i++) {
            faults.set(i, faults.get(i).acknowledged(who));
        }
        unacknowledged = 0;
        changes++;
    }

    /** Records that the alarm is off: faults that are over by now can no longer be acknowledged. */
    void alarmIsOff() {
        unacknowledged = openFault() ? Math.min(1, unacknowledged) : 0;
    }

    /**
     * Adds values for the curves.
     *
     * @param bedC temperature of the bed in °C; NaN for unknown
     * @param nozzleC temperature of the nozzle in °C; NaN for unknown
     * @param milliamps current of the strip
     */
    void measure(double bedC, double nozzleC, int milliamps) {
        curves.add(nowMillis, bedC, nozzleC, milliamps);
    }

    /**
     * How often something has happened that should be kept at once.
     *
     * @return a count
     */
    long changes() {
        return changes;
    }

    /**
     * What has happened.
     *
     * @return as of the last sighting
     */
    Account account() {
        return new Account(
                new Stamp(nowMillis, true).wall(wallAhead).instant(),
                jobs.stream().map(job -> job.wall(wallAhead)).toList(),
                faults.stream().map(fault -> fault.wall(wallAhead)).toList(),
                spans.all(wallAhead),
                curves.pieces(wallAhead, nowMillis));
    }

    private long millis(Stamp stamp) {
        return stamp.wall(wallAhead).millis();
    }
}
