package dev.lampwright.signal;

/** How hot something still is after heating has ended: from 1, as hot as it was, to 0, cool enough to touch. */
final class Cooling {
    private final double ambient;
    private final double hotAbove;
    private double hottest = Double.NaN;

    /**
     * Creates one without readings.
     *
     * @param ambient temperature of the room, in °C; a target at or below it is off
     * @param hotAbove anything no hotter may be touched, in °C
     */
    Cooling(double ambient, double hotAbove) {
        this.ambient = ambient;
        this.hotAbove = hotAbove;
    }

    /**
     * Adds a pair of readings.
     *
     * @param actual temperature now, in °C; NaN if unknown
     * @param target target temperature, in °C; NaN if unknown
     * @return share of the way from the bound to the hottest since heating ended, 0 to 1; 0 within the bound; NaN while it is heated or a
     *     reading is unknown
     */
    double share(double actual, double target) {
        if (target > ambient || actual <= hotAbove) {
            hottest = Double.NaN;
        }
        if (Double.isNaN(actual) || Double.isNaN(target) || target > ambient) {
            return Double.NaN;
        }
        if (actual <= hotAbove) {
            return 0;
        }
        hottest = Double.isNaN(hottest) ? actual : Math.max(hottest, actual);
        return (actual - hotAbove) / (hottest - hotAbove);
    }
}
