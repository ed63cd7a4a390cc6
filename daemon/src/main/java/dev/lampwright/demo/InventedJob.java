package dev.lampwright.demo;

import java.util.List;
import java.util.Locale;

/**
 * What the invented printer does, as a function of job time: it warms up, prints, has a fault, waits, continues and completes; the next job
 * is cancelled half way. Then it starts over.
 */
final class InventedJob {
    private static final double ROOM_C = 22;
    private static final double BED_C = 60;
    private static final double NOZZLE_C = 215;
    private static final double BED_TIME_CONSTANT_S = 2.2;
    private static final double NOZZLE_TIME_CONSTANT_S = 1.4;
    private static final double COOLING_TIME_CONSTANT_S = 6;

    private static final List<Step> STEPS = List.of(
            new Step("READY", 1.5, false, 0, 0),
            new Step("PREHEAT", 7, true, 0, 0),
            new Step("RUN", 5, true, 0, 0.45),
            new Step("ALARM tip blocked", 4, true, 0.45, 0.45),
            new Step("WAIT", 2.5, true, 0.45, 0.45),
            new Step("RUN", 5, true, 0.45, 1),
            new Step("ENDED", 4, false, 1, 1),
            new Step("READY", 4, false, 0, 0),
            new Step("PREHEAT", 7, true, 0, 0),
            new Step("RUN", 5, true, 0, 0.4),
            new Step("CALLED_OFF", 4, false, 0.4, 0.4));

    private static final double ROUND_S =
            STEPS.stream().mapToDouble(Step::seconds).sum();

    /**
     * One stretch of a job.
     *
     * @param phase the printer's own word for it
     * @param seconds how long it lasts
     * @param hot whether the heaters are on
     * @param from progress at its beginning, 0 to 1
     * @param to progress at its end
     */
    private record Step(String phase, double seconds, boolean hot, double from, double to) {}

    private final double bedC;
    private final double nozzleC;
    private final Step step;
    private final double share;

    private InventedJob(Step step, double share, double bedC, double nozzleC) {
        this.step = step;
        this.share = share;
        this.bedC = bedC;
        this.nozzleC = nozzleC;
    }

    /**
     * The printer at a given time.
     *
     * @param seconds job time since the workshop opened, 0 or more
     * @return what it is doing then
     */
    static InventedJob at(double seconds) {
        double left = seconds % ROUND_S;
        double bed = ROOM_C;
        double nozzle = ROOM_C;
        for (Step step : STEPS) {
            double spent = Math.min(left, step.seconds);
            bed = heated(
                    bed, step.hot ? BED_C : ROOM_C, spent, step.hot ? BED_TIME_CONSTANT_S : COOLING_TIME_CONSTANT_S);
            nozzle = heated(
                    nozzle,
                    step.hot ? NOZZLE_C : ROOM_C,
                    spent,
                    step.hot ? NOZZLE_TIME_CONSTANT_S : COOLING_TIME_CONSTANT_S);
            if (left < step.seconds) {
                return new InventedJob(step, spent / step.seconds, bed, nozzle);
            }
            left -= step.seconds;
        }
        throw new IllegalStateException("a round of " + ROUND_S + " s ends before " + seconds + " s");
    }

    /**
     * What it publishes about the job.
     *
     * @return JSON
     */
    String jobMessage() {
        double progress = step.from + (step.to - step.from) * share;
        return String.format(Locale.ROOT, "{\"phase\":\"%s\",\"percent\":%.2f}", step.phase, 100 * progress);
    }

    /**
     * What it publishes about its heaters.
     *
     * @return JSON
     */
    String heatMessage() {
        return String.format(
                Locale.ROOT,
                "{\"plate\":{\"now\":%.2f,\"set\":%.0f},\"tip\":{\"now\":%.2f,\"set\":%.0f}}",
                bedC,
                step.hot ? BED_C : 0,
                nozzleC,
                step.hot ? NOZZLE_C : 0);
    }

    /** First-order response: the remaining way shrinks by a factor of e in each time constant. A heater aims a little past its target. */
    private static double heated(double from, double to, double seconds, double timeConstant) {
        double aim = to > from ? to * 1.04 : to;
        return Math.min(Math.max(from, to), aim + (from - aim) * Math.exp(-seconds / timeConstant));
    }
}
