package dev.lampwright.tool.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether the job was progressing at each time, by the number that shows it best. */
final class HeardJob {
    private static final double LONG = 1.8;
    private static final double LEAST_GAP_S = 4;
    private static final int LEAST_STEPS = 4;

    private final Steps steps;
    private final boolean falls;
    private final double full;
    private final double gapSeconds;
    private final double lastSecond;

    private HeardJob(Trail trail, boolean falls) {
        steps = trail.steps();
        this.falls = falls;
        full = trail.most();
        lastSecond = trail.lastSecond();
        gapSeconds = Math.max(LEAST_GAP_S, median());
    }

    /**
     * Creates one from what is known of the job.
     *
     * @param readings the values whose role is known
     * @return empty if nothing moved that shows it
     */
    static Optional<HeardJob> of(Map<Role, Trail> readings) {
        return List.of(Role.PROGRESS, Role.DONE, Role.LEFT).stream()
                .filter(readings::containsKey)
                .map(role -> new HeardJob(readings.get(role), role == Role.LEFT))
                .filter(job -> job.steps.size() >= LEAST_STEPS)
                .findFirst();
    }

    /** The median time from one step to the next. */
    private double median() {
        double[] gaps = new double[Math.max(0, steps.size() - 1)];
        Arrays.setAll(gaps, i -> steps.second(i + 1) - steps.second(i));
        Arrays.sort(gaps);
        return gaps.length == 0 ? 0 : gaps[gaps.length / 2];
    }

    private boolean isAhead(int step) {
        return step > 0
                && step < steps.size()
                && (falls ? steps.value(step) < steps.value(step - 1) : steps.value(step) > steps.value(step - 1));
    }

    /** Whether it progressed: between two upward steps that were no further apart than usual. */
    boolean advances(double second) {
        int before = steps.until(second);
        return before >= 0
                && isAhead(before + 1)
                && steps.second(before + 1) - steps.second(before) <= LONG * gapSeconds;
    }

    /** How long it has to go on or to stand still before its number shows it, in s. */
    double seenAfterSeconds() {
        return LONG * gapSeconds;
    }

    /** Whether it certainly stood still: longer than usual since the last step, and until the next. */
    private boolean stands(double second) {
        int before = steps.until(second);
        double from = before < 0 ? Double.NEGATIVE_INFINITY : steps.second(before);
        double to = before + 1 < steps.size() ? steps.second(before + 1) : lastSecond + gapSeconds;
        return to - from > LONG * gapSeconds && second - from >= gapSeconds / 2 && to - second > gapSeconds / 2;
    }

    private boolean hasBegun(double second) {
        for (int step = steps.until(second); step > 0; step--) {
            if (isAhead(step)) {
                return true;
            }
        }
        return false;
    }

    /** What the printer does while its heaters are off. */
    Doing whileOff(double second) {
        double now = steps.at(second);
        if (falls) {
            return hasBegun(second) && now <= 0 ? Doing.FINISHED : Doing.RESTING;
        }
        if (Double.isNaN(now) || now <= 0) {
            return Doing.RESTING;
        }
        return now >= full ? Doing.FINISHED : Doing.OFF;
    }

    /** What it does while they are on and at their targets. */
    Doing whileHot(double second) {
        if (whileOff(second) == Doing.RESTING) {
            return Doing.PREPARING;
        }
        return stands(second) ? Doing.STANDING : Doing.UNCLEAR;
    }

    /** What it does if nothing is known of its heaters. */
    Doing alone(double second) {
        return stands(second) && whileOff(second) == Doing.OFF ? Doing.STANDING : Doing.UNCLEAR;
    }
}
