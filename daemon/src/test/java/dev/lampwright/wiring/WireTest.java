package dev.lampwright.wiring;

import static dev.lampwright.testing.Bounds.assertAbove;
import static dev.lampwright.testing.Bounds.assertBelow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WireTest {
    private static final double COLD = 20;

    /** The air temperature for which IEC 60204-1 has its table, its insulation, and a single pair of wires. */
    private static final Surroundings USUAL = new Surroundings(40, 70, 85, 1);

    private static double amps(Wire wire) {
        return wire.carries(USUAL).amps();
    }

    /** ASTM B258: number 36 is 0.0050 in, number 0000 is 0.4600 in, and 39 equal steps lie between. */
    @Test
    void gaugesHangOnTheirTwoFixedDiameters() {
        assertEquals(0.0050 * 25.4, WireGauge.diameterMm(36), 1e-12);
        assertEquals(0.4600 * 25.4, WireGauge.diameterMm(-3), 1e-9);
    }

    /** Diameter in mm, area in mm², resistance in Ω/km: a table as manufacturers print it, found on the web; ±1 %. */
    @ParameterizedTest
    @CsvSource({
        "10, 2.59, 5.26, 3.28",
        "12, 2.05, 3.31, 5.21",
        "14, 1.63, 2.08, 8.29",
        "16, 1.29, 1.31, 13.2",
        "18, 1.02, 0.823, 21.0",
        "20, 0.812, 0.518, 33.5",
        "22, 0.644, 0.326, 53.2",
        "24, 0.511, 0.205, 84.2",
        "26, 0.405, 0.129, 133",
        "30, 0.255, 0.051, 338"
    })
    void gaugesAreThoseOfPrintedTables(int gauge, double millimetres, double squareMm, double ohmsPerKm) {
        assertEquals(millimetres, WireGauge.diameterMm(gauge), 0.01 * millimetres);
        Wire wire = Wire.awg(gauge);
        assertEquals(squareMm, wire.squareMm(), 0.01 * squareMm);
        assertEquals(ohmsPerKm / 1000, wire.coldOhmsPerMetre(), 0.01 * ohmsPerKm / 1000);
    }

    /** IEC 60228, class 5, plain copper: maximum Ω/km at 20 °C, as two cable makers on the web reprint it. */
    @ParameterizedTest
    @CsvSource({"0.5, 39.0", "0.75, 26.0", "1, 19.5", "1.5, 13.3", "2.5, 7.98", "4, 4.95", "6, 3.30"})
    void flexibleConductorsResistAsMuchAsTheStandardLetsThem(double squareMm, double ohmsPerKm) {
        Wire wire = Wire.metric(squareMm);
        assertEquals(ohmsPerKm / 1000, wire.coldOhmsPerMetre(), 1e-9);
        assertAbove(Copper.ohmsPerMetre(squareMm), wire.coldOhmsPerMetre());
    }

    /** A size between two standard sizes is treated as no better than the standard's worst. */
    @ParameterizedTest
    @ValueSource(doubles = {0.14, 0.25, 0.34, 0.9, 3})
    void sizesBetweenAreOnTheSafeSide(double squareMm) {
        double excess = Wire.metric(squareMm).coldOhmsPerMetre() / Copper.ohmsPerMetre(squareMm);
        double worst = 7.98e-3 / Copper.ohmsPerMetre(2.5);
        assertTrue(excess >= worst && excess < 1.2, excess + " of " + worst);
    }

    /** IEC 60028: a wire of annealed copper of 1 mm² and 1 m has 1/58 Ω at 20 °C. */
    @Test
    void copper() {
        assertEquals(1.0 / 58, Copper.ohmsPerMetre(1), 1e-6);
    }

    /** IEC 60228 as a cable maker reprints it: to 20 °C, a resistance measured at 40 °C is multiplied by 0.926, at 60 °C by 0.862. */
    @Test
    void warmCopperResistsMore() {
        assertEquals(1 / 0.926, Copper.warmth(40), 2e-3);
        assertEquals(1 / 0.862, Copper.warmth(60), 4e-3);
        assertEquals(1, Copper.warmth(20));
    }

    @Test
    void thereAndBack() {
        assertEquals(2 * 1.5 * 39.0e-3, Wire.metric(0.5).loopOhms(1.5, COLD), 1e-12);
    }

    /** Half of the chassis figures that tables on the web repeat: 22 AWG 7 A, 20 AWG 11 A, 18 AWG 16 A. */
    @Test
    void carriesHalfOfTheHandbook() {
        assertEquals(3.5, amps(Wire.awg(22)), 1e-9);
        assertEquals(5.5, amps(Wire.awg(20)), 1e-9);
        assertEquals(8, amps(Wire.awg(18)), 1e-9);
        assertAbove(3.5, amps(Wire.awg(21)));
        assertBelow(5.5, amps(Wire.awg(21)));
    }

    @Test
    void thickerBearsMore() {
        for (int gauge = 30; gauge > 10; gauge--) {
            assertBelow(amps(Wire.awg(gauge - 1)), amps(Wire.awg(gauge)));
        }
        assertBelow(amps(Wire.awg(30)), amps(Wire.metric(0.05)));
        assertEquals(amps(Wire.awg(10)), amps(Wire.metric(6)));
    }

    @Test
    void sizesAsTheyAreWritten() {
        assertEquals(Wire.awg(20), Wire.parse("20 AWG"));
        assertEquals(Wire.awg(20), Wire.parse(" awg20 "));
        assertEquals(Wire.metric(0.5), Wire.parse("0.5 mm2"));
        assertEquals(Wire.metric(0.5), Wire.parse("0.50mm²"));
        assertEquals("0.5 mm²", Wire.parse("0.5 mm2").label());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "20", "0.5", "31 AWG", "9 AWG", "99 AWG", "0.04 mm2", "7 mm2", "-1 mm2", "thin", "20 AWG 2"})
    void noSizes(String text) {
        assertThrows(IllegalArgumentException.class, () -> Wire.parse(text));
    }

    @Test
    void thickerOfTheSameKind() {
        assertEquals("18 AWG", Wire.awg(20).thicker().get(0).label());
        assertEquals("0.75 mm²", Wire.metric(0.5).thicker().get(0).label());
        assertTrue(Wire.awg(10).thicker().isEmpty());
    }

    /** Two conductors of 35 µm × 2.5 mm: 2 × 1.7241e-8 ÷ (35e-6 × 2.5e-3) = 0.39408 Ω/m, by hand. */
    @Test
    void conductorsOfAStrip() {
        assertEquals(0.39408, Copper.loopOhmsPerMetre(35, 2.5), 1e-5);
    }
}
