package dev.lampwright.wiring;

/** The two copper conductors of a strip. */
public final class Conductors {
    private static final double MM_PER_UM = 1e-3;

    private Conductors() {}

    /**
     * Resistance of both together at 20 °C.
     *
     * @param micrometres thickness of each, in µm, above 0
     * @param millimetres width of each, in mm, above 0
     * @return Ω a metre
     */
    public static double loopOhmsPerMetre(double micrometres, double millimetres) {
        return 2 * Copper.ohmsPerMetre(micrometres * MM_PER_UM * millimetres);
    }
}
