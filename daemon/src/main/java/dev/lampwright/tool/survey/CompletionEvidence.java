package dev.lampwright.tool.survey;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The completed share of the job and the time left add up to the whole: as the time left falls to 0, the share approaches 1, 100 or 1000.
 * So a straight line through both has one of these values where no time is left.
 */
final class CompletionEvidence implements Evidence {
    private static final double[] WHOLES = {1, 100, 1000};
    private static final double TOLERANCE = 0.03;
    private static final double STRAIGHT = 0.97;
    private static final int LEAST = 8;
    private static final int MOST_TIMES = 20;
    private static final Clue FOUND = new Clue(2.5, "is complete when no time is left");

    private final List<Trail> times;

    /**
     * Prepares.
     *
     * @param trails all values
     */
    CompletionEvidence(Collection<Trail> trails) {
        times = trails.stream()
                .filter(trail ->
                        trail.numeric() && UnitGuess.pace(trail, Role.LEFT).isPresent())
                .limit(MOST_TIMES)
                .toList();
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        boolean may = role == Role.PROGRESS && trail.numeric() && trail.least() >= 0 && trail.most() <= WHOLES[2];
        return may
                        && times.stream()
                                .anyMatch(time -> time != trail
                                        && whole(trail, time, TOLERANCE).isPresent())
                ? FOUND
                : Clue.NONE;
    }

    /**
     * The value that a share of the job approaches as the time left falls to 0, by least squares over the moments at which the time left is
     * running.
     *
     * @param share what was seen of the share
     * @param left what was seen of the time left
     * @param tolerance how far off it may be, as a share of the whole
     * @return 1, 100 or 1000; empty if it approaches something else or is uncertain
     */
    static OptionalDouble whole(Trail share, Trail left, double tolerance) {
        double n = 0;
        double x = 0;
        double y = 0;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        Series series = left.series();
        for (int i = 1; i < series.size(); i++) {
            double done = share.series().at(series.second(i));
            boolean runs = series.value(i) < series.value(i - 1) && series.value(i) > 0 && done > 0;
            if (runs) {
                n++;
                x += series.value(i);
                y += done;
                xx += series.value(i) * series.value(i);
                xy += series.value(i) * done;
                yy += done * done;
            }
        }
        double varX = n * xx - x * x;
        double varY = n * yy - y * y;
        double slope = (n * xy - x * y) / varX;
        double straight = (n * xy - x * y) * (n * xy - x * y) / (varX * varY);
        double whole = (y - slope * x) / n;
        if (n < LEAST || !(straight > STRAIGHT) || slope >= 0) {
            return OptionalDouble.empty();
        }
        return Arrays.stream(WHOLES)
                .filter(one -> Math.abs(whole / one - 1) < tolerance)
                .findFirst();
    }
}
