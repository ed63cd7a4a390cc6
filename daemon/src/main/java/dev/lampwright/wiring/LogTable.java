package dev.lampwright.wiring;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** A table of what conductors of given cross-sections carry, interpolated on logarithmic scales. */
final class LogTable {
    private final NavigableMap<Double, Double> entries;

    /**
     * Creates a table.
     *
     * @param entries A by mm², at least two, both rising
     */
    LogTable(Map<Double, Double> entries) {
        this.entries = new TreeMap<>(entries);
    }

    /**
     * Looks up a value.
     *
     * @param squareMm cross-section, in mm², above 0
     * @return A; above the table its last entry, below it proportional to the cross-section
     */
    double at(double squareMm) {
        Map.Entry<Double, Double> thinner = entries.floorEntry(squareMm);
        Map.Entry<Double, Double> thicker = entries.ceilingEntry(squareMm);
        if (thinner == null) {
            return thicker.getValue() * squareMm / thicker.getKey();
        }
        if (thicker == null || thicker.getKey().equals(thinner.getKey())) {
            return thinner.getValue();
        }
        double way = Math.log(squareMm / thinner.getKey()) / Math.log(thicker.getKey() / thinner.getKey());
        return thinner.getValue() * Math.pow(thicker.getValue() / thinner.getValue(), way);
    }
}
