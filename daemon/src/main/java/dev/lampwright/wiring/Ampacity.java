package dev.lampwright.wiring;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * What a wire bears without growing too warm. The figures are half of those that the Handbook of Electronic Tables and Formulas is
 * said to give for chassis wiring, as many tables on the web repeat them (common practice; the handbook itself was not seen). The half is
 * for bundles, enclosures and warm printers. Between the gauges it is reckoned on logarithmic scales.
 */
final class Ampacity {
    private static final double SHARE = 0.5;

    private static final NavigableMap<Double, Double> CHASSIS = new TreeMap<>(Map.ofEntries(
            entry(30, 0.86),
            entry(28, 1.4),
            entry(26, 2.2),
            entry(24, 3.5),
            entry(22, 7),
            entry(20, 11),
            entry(18, 16),
            entry(16, 22),
            entry(14, 32),
            entry(12, 41),
            entry(10, 55)));

    private Ampacity() {}

    /**
     * What a single insulated copper wire bears all the time.
     *
     * @param squareMm its cross-section, in mm²
     * @return A; outside the table that of its nearest end, and less in proportion below it
     */
    static double amps(double squareMm) {
        Map.Entry<Double, Double> thinner = CHASSIS.floorEntry(squareMm);
        Map.Entry<Double, Double> thicker = CHASSIS.ceilingEntry(squareMm);
        if (thinner == null) {
            return SHARE * thicker.getValue() * squareMm / thicker.getKey();
        }
        if (thicker == null || thicker.getKey().equals(thinner.getKey())) {
            return SHARE * thinner.getValue();
        }
        double way = Math.log(squareMm / thinner.getKey()) / Math.log(thicker.getKey() / thinner.getKey());
        return SHARE * thinner.getValue() * Math.pow(thicker.getValue() / thinner.getValue(), way);
    }

    private static Map.Entry<Double, Double> entry(int gauge, double amps) {
        return Map.entry(WireGauge.squareMm(gauge), amps);
    }
}
