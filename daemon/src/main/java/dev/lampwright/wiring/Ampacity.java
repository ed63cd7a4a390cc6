package dev.lampwright.wiring;

import java.util.List;
import java.util.Map;

/**
 * What a wire carries without getting too warm: the lower of two figures.
 *
 * <p>The first is that of IEC 60204-1:2016 for machines, derated for the surroundings: table 6 for PVC at 40 °C (from memory), from 0.75
 * mm² in conduit (B1), for 0.2 and 0.5 mm² pairs for electronics (B2), below that proportional to the cross-section. A different
 * temperature of air or insulation counts by the square root of the remaining temperature rise, which gives the factors of table D.1 (1.15
 * at 30 °C to 0.58 at 60 °C; second hand, from a reprint). Pairs in one bundle count by IEC 60364-5-52, table B.52.17, first row (from
 * memory).
 *
 * <p>The second is half of the figure for chassis wiring attributed to the Handbook of Electronic Tables and Formulas, as repeated by many
 * tables on the web (common practice; the handbook itself was not consulted).
 */
final class Ampacity {
    private static final double SHARE = 0.5;
    private static final double TABLE_AMBIENT_C = 40;
    private static final double TABLE_INSULATION_C = 70;
    private static final String HALVED = "half of the usual chassis figure, common practice";

    private static final LogTable CHASSIS = new LogTable(Map.ofEntries(
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

    private static final LogTable MACHINE =
            new LogTable(Map.of(0.2, 4.3, 0.5, 7.5, 0.75, 8.6, 1.0, 10.3, 1.5, 13.5, 2.5, 18.3, 4.0, 24.0, 6.0, 31.0));

    /** For 1, 2, 3 and so on to 9 circuits in a bundle. */
    private static final List<Double> BUNDLED = List.of(1.0, 0.80, 0.70, 0.65, 0.60, 0.57, 0.54, 0.52, 0.50);

    /** For 20 circuits, used for everything beyond nine. */
    private static final double MANY_BUNDLED = 0.38;

    private Ampacity() {}

    /**
     * What a single insulated copper wire carries continuously.
     *
     * @param squareMm its cross-section, in mm²
     * @param around what surrounds it
     * @return the lower of the two figures; 0 A if the air is as warm as its insulation may get
     */
    static Rating of(double squareMm, Surroundings around) {
        Rating halved = new Rating(SHARE * CHASSIS.at(squareMm), HALVED);
        return halved.or(new Rating(machine(squareMm, around), words(around)));
    }

    private static double machine(double squareMm, Surroundings around) {
        double left = Math.max(0, around.insulationC() - around.ambientC()) / (TABLE_INSULATION_C - TABLE_AMBIENT_C);
        return MACHINE.at(squareMm) * Math.sqrt(left) * bundled(around.bundled());
    }

    private static double bundled(int pairs) {
        return pairs > BUNDLED.size() ? MANY_BUNDLED : BUNDLED.get(pairs - 1);
    }

    private static String words(Surroundings around) {
        return "IEC 60204-1, from memory, for " + Math.round(around.insulationC()) + " °C insulation in air of "
                + Math.round(around.ambientC()) + " °C"
                + (around.bundled() > 1 ? ", " + around.bundled() + " pairs in a bundle" : "");
    }

    private static Map.Entry<Double, Double> entry(int gauge, double amps) {
        return Map.entry(WireGauge.squareMm(gauge), amps);
    }
}
