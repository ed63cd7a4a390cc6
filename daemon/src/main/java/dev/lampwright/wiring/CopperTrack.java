package dev.lampwright.wiring;

/**
 * One conductor of a strip: a copper track with air on one side. Its temperature rise is calculated by the fit to the curves of IPC-2221
 * for external conductors (constants second hand, from calculators on the web): I = 0.048 · ΔT^0.44 · A^0.725, with A in square mils.
 *
 * @param squareMils cross-section, in square mils (thousandths of an inch, squared), above 0
 */
public record CopperTrack(double squareMils) {
    private static final double K = 0.048;
    private static final double WARMING = 0.44;
    private static final double AREA = 0.725;
    private static final double SQUARE_MM_PER_SQUARE_MIL = 0.0254 * 0.0254;

    /**
     * The track of a strip with known resistance: both conductors are assumed to be equal, of copper at 20 °C.
     *
     * @param loopOhmsPerMetre resistance of the two conductors together, in Ω per metre, above 0
     * @return one of them
     */
    public static CopperTrack ofLoop(double loopOhmsPerMetre) {
        return new CopperTrack(Copper.squareMm(loopOhmsPerMetre / 2) / SQUARE_MM_PER_SQUARE_MIL);
    }

    /**
     * The temperature rise caused by a current.
     *
     * @param amps A (RMS), 0 or more
     * @return K above the air
     */
    public double rise(double amps) {
        return Math.pow(amps / (K * Math.pow(squareMils, AREA)), 1 / WARMING);
    }

    /**
     * The current that causes a temperature rise.
     *
     * @param kelvin K above the air, 0 or more
     * @return A (RMS)
     */
    public double amps(double kelvin) {
        return K * Math.pow(kelvin, WARMING) * Math.pow(squareMils, AREA);
    }
}
