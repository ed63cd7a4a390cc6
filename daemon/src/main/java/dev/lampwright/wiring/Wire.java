package dev.lampwright.wiring;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * One wire.
 *
 * @param size its size as sold: {@code 20 AWG} or {@code 0.5 mm²}
 * @param squareMm its cross-section, in mm²
 * @param copperOhmsPerMetre its resistance at 20 °C if it were of plain copper, in Ω per metre
 * @param conductor its material
 */
public record Wire(String size, double squareMm, double copperOhmsPerMetre, Conductor conductor) {
    private static final Pattern AWG = Pattern.compile("(?:AWG ?(\\d{1,2})|(\\d{1,2}) ?AWG)", Pattern.CASE_INSENSITIVE);
    private static final Pattern METRIC = Pattern.compile("(\\d{1,2}(?:\\.\\d{1,3})?) ?(?:mm2|mm²)");
    private static final int THINNEST_AWG = 30;
    private static final int THICKEST_AWG = 10;
    private static final double THINNEST_MM2 = 0.05;
    private static final double THICKEST_MM2 = 6;

    /** The maximum resistance of a flexible conductor at 20 °C, in Ω per metre, by mm². Source: IEC 60228, class 5, plain copper. */
    private static final Map<Double, Double> FLEXIBLE = new TreeMap<>(
            Map.of(0.5, 39.0e-3, 0.75, 26.0e-3, 1.0, 19.5e-3, 1.5, 13.3e-3, 2.5, 7.98e-3, 4.0, 4.95e-3, 6.0, 3.30e-3));

    /** The resistance of the worst of those relative to copper of its full cross-section. */
    private static final double FLEXIBLE_EXCESS = 1.16;

    /** What is valid, for messages about {@link #parse}. */
    public static final String WANTED =
            "give a gauge from \"30 AWG\" to \"10 AWG\", or a cross-section from \"0.05 mm2\" to \"6 mm2\"";

    /**
     * Reads a size.
     *
     * @param text for example {@code 20 AWG}, {@code AWG 20}, {@code 0.5 mm2} or {@code 0.5 mm²}
     * @return the wire
     * @throws IllegalArgumentException if it is not a size, or is out of the range that this can calculate
     */
    public static Wire parse(String text) {
        Matcher awg = AWG.matcher(text.strip());
        if (awg.matches()) {
            return awg(Integer.parseInt(awg.group(1) == null ? awg.group(2) : awg.group(1)));
        }
        Matcher metric = METRIC.matcher(text.strip());
        if (metric.matches()) {
            return metric(Double.parseDouble(metric.group(1)));
        }
        throw new IllegalArgumentException("\"" + text + "\" is not a wire size");
    }

    /**
     * A wire by its American gauge, as solid copper of the diameter of ASTM B258.
     *
     * @param gauge 30 to 10
     * @return the wire
     * @throws IllegalArgumentException if the gauge is out of range
     */
    public static Wire awg(int gauge) {
        if (gauge < THICKEST_AWG || gauge > THINNEST_AWG) {
            throw new IllegalArgumentException(gauge + " AWG is out of range");
        }
        double squareMm = WireGauge.squareMm(gauge);
        return new Wire(gauge + " AWG", squareMm, Copper.ohmsPerMetre(squareMm), Conductor.COPPER);
    }

    /**
     * A wire by its nominal cross-section, with the maximum resistance of a flexible conductor of that size.
     *
     * @param squareMm 0.05 to 6 mm²
     * @return the wire
     * @throws IllegalArgumentException if the cross-section is out of range
     */
    public static Wire metric(double squareMm) {
        if (squareMm < THINNEST_MM2 || squareMm > THICKEST_MM2) {
            throw new IllegalArgumentException(squareMm + " mm² is out of range");
        }
        String label = BigDecimal.valueOf(squareMm).stripTrailingZeros().toPlainString() + " mm²";
        double ohms = FLEXIBLE.getOrDefault(squareMm, FLEXIBLE_EXCESS * Copper.ohmsPerMetre(squareMm));
        return new Wire(label, squareMm, ohms, Conductor.COPPER);
    }

    /**
     * The same size in another material.
     *
     * @param other its material
     * @return the wire
     */
    public Wire of(Conductor other) {
        return new Wire(size, squareMm, copperOhmsPerMetre, other);
    }

    /**
     * Its name.
     *
     * @return its size, and its material unless that is plain copper
     */
    public String label() {
        return conductor == Conductor.COPPER ? size : size + " " + conductor.words();
    }

    /**
     * Resistance of one conductor at 20 °C.
     *
     * @return Ω per metre
     */
    public double coldOhmsPerMetre() {
        return copperOhmsPerMetre * conductor.resistance();
    }

    /**
     * Resistance on the way to a load and back.
     *
     * @param metres length, one way
     * @param celsius temperature of the wire, in °C
     * @return Ω
     */
    public double loopOhms(double metres, double celsius) {
        return 2 * metres * coldOhmsPerMetre() * Copper.warmth(celsius);
    }

    /**
     * What this carries continuously; see {@link Ampacity}.
     *
     * @param around what surrounds it
     * @return A, and where the figure comes from
     */
    public Rating carries(Surroundings around) {
        Rating copper = Ampacity.of(squareMm, around);
        return new Rating(copper.amps() * conductor.carries(), copper.source());
    }

    /**
     * Sizes that are commonly sold and are thicker than this.
     *
     * @return with the same measure, gauge or mm², and the same material, the thinnest first
     */
    public List<Wire> thicker() {
        Stream<Wire> sizes = size.endsWith("AWG")
                ? IntStream.iterate(THINNEST_AWG, gauge -> gauge >= THICKEST_AWG, gauge -> gauge - 2)
                        .mapToObj(Wire::awg)
                : FLEXIBLE.keySet().stream().map(Wire::metric);
        return sizes.filter(wire -> wire.squareMm > squareMm)
                .map(wire -> wire.of(conductor))
                .toList();
    }
}
