package dev.lampwright.wiring;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CopperTrackTest {
    /** 1 oz of copper per square foot, in mils, as IPC-2221 calculators use it. */
    private static final double OUNCE = 1.378;

    /**
     * Results of IPC-2221 calculators for external conductors of 1 oz: amperes, kelvin and width in mils. The first is the example that
     * such calculators begin with (from memory); the others are the published formula A = (I ÷ (0.048·ΔT^0.44))^(1 ÷ 0.725), by hand.
     */
    @ParameterizedTest
    @CsvSource({"1, 10, 11.8", "10, 10, 283", "5, 20, 70.8", "8, 40, 89.0"})
    void widthsOfCalculators(double amps, double kelvin, double mils) {
        CopperTrack track = new CopperTrack(mils * OUNCE);
        assertEquals(kelvin, track.rise(amps), 0.02 * kelvin);
        assertEquals(amps, track.amps(kelvin), 0.01 * amps);
    }

    /** 35 µm × 2.5 mm are 0.0875 mm², 135.6 square mils; the loop of two such conductors has 0.39408 Ω/m. 10.68 A warm it by 66 K. */
    @Test
    void conductorsOfAStrip() {
        CopperTrack track = CopperTrack.ofLoop(Copper.loopOhmsPerMetre(35, 2.5));
        assertEquals(135.6, track.squareMils(), 0.1);
        assertEquals(66, track.rise(10.68), 0.5);
        assertEquals(0, track.rise(0));
    }
}
