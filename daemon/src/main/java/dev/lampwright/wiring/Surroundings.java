package dev.lampwright.wiring;

/**
 * What surrounds wires and connectors.
 *
 * @param ambientC warmest air around them and the strip, in °C
 * @param insulationC rated temperature of the wires' insulation, in °C
 * @param connectorC rated temperature of the connectors, in °C
 * @param bundled pairs of wires that lie in one bundle or conduit and are loaded at the same time, 1 or more
 */
public record Surroundings(double ambientC, double insulationC, double connectorC, int bundled) {
    /**
     * The permitted temperature rise of a contact at its rated current, in K: what connector manufacturers test to (EIA-364-70 and IEC
     * 60512-5-1; second hand, the standards themselves were not consulted).
     */
    private static final double CONNECTOR_RISE_K = 30;

    /**
     * What a connector carries here. Its full rating up to the temperature at which its own heating brings it to its limit; above that, it
     * falls as the square root of the remaining margin, the form of the base curves of IEC 60512-5-2.
     *
     * @param ratedAmps its rating, in A
     * @return A, never above its rating; 0 from its temperature limit on
     */
    public Rating connector(double ratedAmps) {
        double share = Math.sqrt(Math.max(0, connectorC - ambientC) / CONNECTOR_RISE_K);
        return share >= 1
                ? new Rating(ratedAmps, "its rating")
                : new Rating(
                        share * ratedAmps,
                        "its rating, derated for " + Math.round(ambientC) + " °C by IEC 60512-5-2, up to "
                                + Math.round(connectorC) + " °C");
    }
}
