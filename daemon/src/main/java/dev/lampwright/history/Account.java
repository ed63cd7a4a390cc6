package dev.lampwright.history;

import java.time.Instant;
import java.util.List;

/**
 * What has happened, as of one moment. All times are on the wall clock; every list has the oldest first.
 *
 * @param asOf the moment
 * @param jobs jobs, at most {@link Logbook#MOST_JOBS}
 * @param faults faults, at most {@link Logbook#MOST_FAULTS}
 * @param spans states over time
 * @param curves temperatures and current of the last hours
 */
public record Account(
        Instant asOf, List<PastJob> jobs, List<PastFault> faults, List<StateSpan> spans, List<CurvePiece> curves) {
    /** Keeps copies of the lists. */
    public Account {
        jobs = List.copyOf(jobs);
        faults = List.copyOf(faults);
        spans = List.copyOf(spans);
        curves = List.copyOf(curves);
    }

    /**
     * What lasted until a given time or longer.
     *
     * @param since the time
     * @return the same, without what was over by then
     */
    public Account since(Instant since) {
        Instant earliest = since.isBefore(Instant.EPOCH) ? Instant.EPOCH : since;
        long from = (earliest.isAfter(asOf) ? asOf : earliest).toEpochMilli();
        return new Account(
                asOf,
                jobs.stream().filter(job -> job.until().millis() >= from).toList(),
                faults.stream()
                        .filter(fault -> fault.over().orElse(Stamp.wall(asOf)).millis() >= from)
                        .toList(),
                spans.stream().filter(span -> span.to().millis() >= from).toList(),
                curves.stream()
                        .map(piece -> piece.last((int)
                                Math.max(0, Math.min(Curves.MOST, (piece.endMillis() - from) / Curves.STEP_MILLIS))))
                        .filter(piece -> piece.length() > 0)
                        .toList());
    }
}
