package dev.lampwright.wiring;

/** The resistance of copper. */
public final class Copper {
    /** Resistivity of annealed copper at 20 °C, in Ω·m. Source: the International Annealed Copper Standard, IEC 60028. */
    static final double OHM_METRES = 1.7241e-8;

    /** Change of resistance for each kelvin from 20 °C, as a share of it. Source: IEC 60028 (from memory). */
    private static final double PER_KELVIN = 0.00393;

    private static final double COLD_C = 20;
    private static final double SQUARE_MM = 1e-6;
    private static final double MM_PER_UM = 1e-3;

    private Copper() {}

    /**
     * Resistance of a conductor of even cross-section at 20 °C.
     *
     * @param squareMm its cross-section, in mm², above 0
     * @return Ω per metre
     */
    static double ohmsPerMetre(double squareMm) {
        return OHM_METRES / (squareMm * SQUARE_MM);
    }

    /**
     * Cross-section of a conductor with known resistance.
     *
     * @param ohmsPerMetre its resistance at 20 °C, in Ω per metre, above 0
     * @return mm²
     */
    static double squareMm(double ohmsPerMetre) {
        return OHM_METRES / (ohmsPerMetre * SQUARE_MM);
    }

    /**
     * The resistance of a conductor relative to 20 °C.
     *
     * @param celsius its temperature, in °C
     * @return a factor, 1 at 20 °C
     */
    public static double warmth(double celsius) {
        return 1 + PER_KELVIN * (celsius - COLD_C);
    }

    /**
     * Resistance of the two conductors of a strip together at 20 °C.
     *
     * @param micrometres thickness of each, in µm, above 0
     * @param millimetres width of each, in mm, above 0
     * @return Ω per metre
     */
    public static double loopOhmsPerMetre(double micrometres, double millimetres) {
        return 2 * ohmsPerMetre(micrometres * MM_PER_UM * millimetres);
    }
}
