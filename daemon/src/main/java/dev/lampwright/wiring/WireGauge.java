package dev.lampwright.wiring;

/** American wire gauge. Source: ASTM B258. */
final class WireGauge {
    private static final double D36_MM = 0.127;
    private static final double RATIO = 92;
    private static final double STEPS = 39;

    private WireGauge() {}

    /**
     * Diameter of a solid wire.
     *
     * @param gauge its number, such as 20
     * @return mm
     */
    static double diameterMm(int gauge) {
        return D36_MM * Math.pow(RATIO, (36 - gauge) / STEPS);
    }

    /**
     * Cross-section of a wire.
     *
     * @param gauge its number
     * @return mm²
     */
    static double squareMm(int gauge) {
        double diameter = diameterMm(gauge);
        return Math.PI / 4 * diameter * diameter;
    }
}
