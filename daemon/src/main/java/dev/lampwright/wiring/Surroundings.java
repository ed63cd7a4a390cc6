package dev.lampwright.wiring;

/**
 * What surrounds wires and connectors.
 *
 * @param ambientC warmest air around them and the strip, in °C
 * @param insulationC temperature that the wires' insulation is made for, in °C
 * @param connectorC highest temperature that the connectors are made for, in °C
 * @param bundled pairs of wires that lie in one bundle or conduit and are loaded at the same time, 1 or more
 */
public record Surroundings(double ambientC, double insulationC, double connectorC, int bundled) {
    /**
     * How much a contact may warm up at its rated current, in K: what makers of connectors test to (EIA-364-70 and IEC
     * 60512-5-1; second hand, the standards were not seen).
     */
    private static final double CONNECTOR_RISE_K = 30;

    /**
     * What a connector carries here. Up to the temperature at which its own warming takes it to its highest one that is its rating; above, it
     * falls as the square root of what is left, the form of the base curves of IEC 60512-5-2.
     *
     * @param ratedAmps its rating, in A
     * @return A, not above its rating; 0 from its highest temperature on
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
