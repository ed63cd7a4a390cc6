package dev.lampwright.signal;

/** How far a heat-up has got, from where it began. */
final class HeatUp {
    /** A target no further than this from the start is reached, in K. */
    private static final double REACHED_WITHIN = 1.0;

    private final double ambient;
    private double target = Double.NaN;
    private double start = Double.NaN;

    /**
     * Makes one that has heard nothing.
     *
     * @param ambient temperature of the room, in °C; a target at or below it is off
     */
    HeatUp(double ambient) {
        this.ambient = ambient;
    }

    /**
     * Takes a pair of readings.
     *
     * @param actual temperature now, in °C; NaN if unknown
     * @param newTarget temperature to reach, in °C; NaN if unknown
     * @return share of the way from start to target, 0 to 1; NaN if nothing heats or a reading is unknown
     */
    double share(double actual, double newTarget) {
        if (Double.isNaN(actual) || Double.isNaN(newTarget) || newTarget <= ambient) {
            target = newTarget;
            return Double.NaN;
        }
        if (newTarget != target) {
            start = begin(actual);
            target = newTarget;
        }
        start = Math.min(start, actual);
        double way = target - start;
        return way <= REACHED_WITHIN ? 1 : Math.min(1, (actual - start) / way);
    }

    /** A heat-up that was under way when the first target was heard began at room temperature. */
    private double begin(double actual) {
        return Double.isNaN(target) ? Math.min(ambient, actual) : actual;
    }
}
