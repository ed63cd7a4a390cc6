package dev.lampwright.signal;

/**
 * How far a heat-up has got, from where it began. Changing the target on the way does not restart it; raising it after it was reached does.
 */
final class HeatUp {
    /** A target no further than this away is reached, in K. */
    private static final double REACHED_WITHIN = 1.0;

    private final double ambient;
    private double target = Double.NaN;
    private double start = Double.NaN;
    private boolean wasOff;
    private boolean isReached;

    /**
     * Creates one without readings.
     *
     * @param ambient temperature of the room, in °C; a target at or below it is off
     */
    HeatUp(double ambient) {
        this.ambient = ambient;
    }

    /**
     * Adds a pair of readings.
     *
     * @param actual temperature now, in °C; NaN if unknown
     * @param newTarget target temperature, in °C; NaN if unknown
     * @return share of the way from start to target, 0 to 1; NaN if nothing heats or a reading is unknown
     */
    double share(double actual, double newTarget) {
        if (newTarget <= ambient) {
            end();
            return Double.NaN;
        }
        if (Double.isNaN(actual) || Double.isNaN(newTarget)) {
            return Double.NaN;
        }
        if (newTarget != target) {
            aim(actual, newTarget);
        }
        start = Math.min(start, actual);
        double way = target - start;
        isReached |= actual >= target - REACHED_WITHIN;
        return way <= REACHED_WITHIN ? 1 : Math.min(1, (actual - start) / way);
    }

    private void end() {
        wasOff = true;
        isReached = false;
        target = Double.NaN;
        start = Double.NaN;
    }

    /** If a heat-up was under way when the first target was heard, it is assumed to have begun at room temperature. */
    private void aim(double actual, double newTarget) {
        if (Double.isNaN(start)) {
            start = wasOff ? actual : Math.min(ambient, actual);
        } else if (isReached && newTarget > target) {
            start = actual;
        }
        isReached = false;
        target = newTarget;
    }
}
