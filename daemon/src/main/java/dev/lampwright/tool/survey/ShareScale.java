package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether a share of the job is out of 1, 100 or 1000, by what else shows how far the job is: the time left, or a count and its total. */
final class ShareScale {
    private static final double[] WHOLES = {1, 100, 1000};
    private static final double TOLERANCE = 0.3;

    private ShareScale() {}

    /**
     * The scale of a share.
     *
     * @param share what was seen of it
     * @param readings the values whose role is known
     * @return empty if nothing else shows it
     */
    static Optional<Gauge> of(Trail share, Map<Role, Trail> readings) {
        OptionalDouble byTime = readings.containsKey(Role.LEFT)
                ? CompletionEvidence.whole(share, readings.get(Role.LEFT), TOLERANCE)
                : OptionalDouble.empty();
        OptionalDouble whole = byTime.isPresent() || !readings.containsKey(Role.TOTAL)
                ? byTime
                : byCount(share, readings.get(Role.DONE), readings.get(Role.TOTAL));
        return whole.stream().mapToObj(ShareScale::gauge).findFirst();
    }

    private static Gauge gauge(double whole) {
        return whole == 1 ? Gauge.PLAIN : whole == 100 ? Gauge.of(Unit.PERCENT) : new Gauge(Unit.OWN, 1 / whole);
    }

    /** At the last step of the count, which is when it is known best. */
    private static OptionalDouble byCount(Trail share, Trail done, Trail total) {
        Steps steps = done.steps();
        for (int i = steps.size() - 1; i > 0; i--) {
            double second = steps.second(i);
            double part = steps.value(i) / total.steps().at(second);
            double told = share.steps().at(second);
            if (part > 0 && part <= 1 && told > 0) {
                return Arrays.stream(WHOLES)
                        .filter(whole -> Math.abs(told / whole / part - 1) < TOLERANCE)
                        .findFirst();
            }
        }
        return OptionalDouble.empty();
    }
}
