package dev.lampwright.tool.replay;

import dev.lampwright.history.Account;
import dev.lampwright.history.CurvePiece;
import dev.lampwright.history.PastJob;
import dev.lampwright.history.StateSpan;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusLines.Entry;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A job that the history remembers, as if it had been recorded. The history has its states, and the temperatures of its last hours every
 * ten seconds; it has no targets and only the last progress. So the highest temperature counts as the target, and progress rises evenly
 * from the first printing to the end of the job.
 */
public final class JobPast {
    private final Account account;
    private final PastJob job;
    private final String printer;
    private final Instant began;
    private final Instant until;
    private final TreeMap<Long, List<Change>> changes = new TreeMap<>();

    /** What is new in a status at a time. */
    private interface Change {
        PrinterStatus in(PrinterStatus before, long nanos);
    }

    private JobPast(Account account, PastJob job, String printer) {
        this.account = account;
        this.job = job;
        this.printer = printer;
        began = job.began().instant();
        until = job.until().instant();
    }

    /**
     * Puts a job together.
     *
     * @param account what has happened with its printer
     * @param job one of its jobs
     * @param printer the printer's name; empty if it has none
     * @return what was reported, in chronological order, from the beginning of the job
     */
    public static List<Entry> entries(Account account, PastJob job, String printer) {
        JobPast past = new JobPast(account, job, printer);
        past.addStates();
        past.addTemperatures();
        past.addProgress();
        return past.all();
    }

    private void add(Instant at, Change change) {
        Instant within = at.isBefore(began) ? began : at;
        long nanos = Duration.between(began, within).toNanos();
        changes.computeIfAbsent(nanos, any -> new ArrayList<>()).add(change);
    }

    private boolean isWithin(Instant at) {
        return !at.isBefore(began) && !at.isAfter(until);
    }

    private void addStates() {
        for (StateSpan span : account.spans()) {
            boolean counts =
                    span.to().instant().isAfter(began) && !span.from().instant().isAfter(until);
            if (counts) {
                add(span.from().instant(), (before, nanos) -> before.withState(span.state(), nanos));
            }
        }
    }

    private void addTemperatures() {
        double bed = Double.NaN;
        double nozzle = Double.NaN;
        for (CurvePiece piece : account.curves()) {
            for (int i = 0; i < piece.values(); i++) {
                if (isWithin(piece.at(i))) {
                    double bedC = piece.bedC(i);
                    double nozzleC = piece.nozzleC(i);
                    add(
                            piece.at(i),
                            (before, nanos) -> before.withReading(Quantity.BED_ACTUAL, bedC, nanos)
                                    .withReading(Quantity.NOZZLE_ACTUAL, nozzleC, nanos));
                    bed = higher(bed, bedC);
                    nozzle = higher(nozzle, nozzleC);
                }
            }
        }
        double bedTarget = bed;
        double nozzleTarget = nozzle;
        add(
                began,
                (before, nanos) -> before.withReading(Quantity.BED_SETPOINT, bedTarget, nanos)
                        .withReading(Quantity.NOZZLE_SETPOINT, nozzleTarget, nanos));
    }

    private static double higher(double one, double other) {
        return Double.isNaN(one) ? other : Double.isNaN(other) ? one : Math.max(one, other);
    }

    /** At every hundredth, from where the printer began to print. */
    private void addProgress() {
        Instant from = account.spans().stream()
                .filter(span -> span.state() == PrinterState.PRINTING)
                .map(span -> span.from().instant())
                .filter(this::isWithin)
                .findFirst()
                .orElse(began);
        long millis = Duration.between(from, until).toMillis();
        for (int step = 0; step <= 100 && !Double.isNaN(job.progress()); step++) {
            double share = job.progress() * step / 100;
            add(
                    from.plusMillis(millis * step / 100),
                    (before, nanos) -> before.withReading(Quantity.JOB_PROGRESS, share, nanos));
        }
    }

    private List<Entry> all() {
        List<Entry> all = new ArrayList<>();
        PrinterStatus status = PrinterStatus.nothingHeard();
        for (long nanos : changes.keySet()) {
            for (Change change : changes.get(nanos)) {
                status = change.in(status, nanos);
            }
            all.add(new Entry(Optional.empty(), nanos, status, 0, printer));
        }
        return all;
    }
}
