package dev.lampwright.tool.survey;

import java.util.Map;

/** What the heaters were doing at each time. */
final class HeardHeat {
    private static final double BELOW_SHARE = 0.06;
    private static final double MOVING_S = 12;
    private static final double MOVING_SHARE = 0.03;
    private static final double HOT_SHARE = 0.5;

    private final Map<Role, Trail> readings;

    /** What they are doing: off; on, with one of them well below its target; on, with all at their targets; or unknown. */
    enum Stand {
        OFF,
        BELOW,
        THERE,
        UNKNOWN
    }

    /**
     * Prepares.
     *
     * @param readings the values whose role is known
     */
    HeardHeat(Map<Role, Trail> readings) {
        this.readings = Map.copyOf(readings);
    }

    /** What they were doing at a given time. */
    Stand at(double second) {
        Stand all = Stand.UNKNOWN;
        for (HeatedPart heater : HeatedPart.values()) {
            Stand one = at(heater, second);
            boolean counts = all == Stand.UNKNOWN || one == Stand.BELOW || (one == Stand.THERE && all == Stand.OFF);
            all = one != Stand.UNKNOWN && counts ? one : all;
        }
        return all;
    }

    private Stand at(HeatedPart heater, double second) {
        Trail target = readings.get(heater.target());
        Trail actual = readings.get(heater.actual());
        if (target != null) {
            return byTarget(actual, target, second);
        }
        return actual == null || heater == HeatedPart.CHAMBER ? Stand.UNKNOWN : alone(actual, second);
    }

    /** A target that is as low as it ever was counts as off: some are set to 0, some to 0 in another unit, some to room temperature. */
    private static Stand byTarget(Trail actual, Trail target, double second) {
        double wanted = target.steps().at(second);
        if (Double.isNaN(wanted) || (target.least() == target.most() && wanted > 0)) {
            return Stand.UNKNOWN;
        }
        if (wanted <= target.least()) {
            return Stand.OFF;
        }
        double now = actual == null ? Double.NaN : actual.series().at(second);
        boolean isBelow = now < wanted - BELOW_SHARE * (actual == null ? 0 : actual.most() - actual.least());
        return isBelow ? Stand.BELOW : Stand.THERE;
    }

    private static Stand alone(Trail actual, double second) {
        double range = actual.most() - actual.least();
        double now = actual.series().at(second);
        double rise = actual.series().at(second + MOVING_S) - actual.series().at(second - MOVING_S);
        if (!(range > 0) || Double.isNaN(now) || Double.isNaN(rise)) {
            return Stand.UNKNOWN;
        }
        if (rise > MOVING_SHARE * range) {
            return Stand.BELOW;
        }
        boolean isHot = now > actual.least() + HOT_SHARE * range;
        return isHot && rise > -MOVING_SHARE * range ? Stand.THERE : Stand.OFF;
    }
}
