package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FuseRatingsTest {
    /** IEC 60127 (from memory): these are preferred. */
    @Test
    void preferredRatings() {
        for (double amps : new double[] {1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10}) {
            assertTrue(FuseRatings.has(amps), amps + " A");
        }
        assertFalse(FuseRatings.has(0.55));
        assertFalse(FuseRatings.has(11));
    }

    /** ISO 8820-3, blade fuses: 3, 7.5 and 15 A; UL 248-14, glass fuses: 3 and 7 A. Both from lists of what is sold; neither standard was seen. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 3, 4, 5, 7, 7.5, 10, 15, 20, 25, 30})
    void bladesAndAmericanGlassFusesAreStandardToo(double amps) {
        assertTrue(FuseRatings.has(amps));
    }

    /** ISO 3: R10 has ten steps a decade, and its rounded numbers are within 2 % of the powers of ten. */
    @Test
    void tenStepsADecade() {
        for (int step = 0; step <= 23; step++) {
            double exact = 0.1 * Math.pow(10, step / 10.0);
            assertTrue(FuseRatings.atMost(1.02 * exact).orElseThrow() > 0.98 * exact, exact + " A");
        }
    }

    @Test
    void betweenLoadAndWire() {
        assertEquals(OptionalDouble.of(2), FuseRatings.between(1.5, 5.5));
        assertEquals(OptionalDouble.of(2.5), FuseRatings.between(1.51, 5.5));
        assertEquals(OptionalDouble.empty(), FuseRatings.between(1.51, 2.2));
        assertEquals(
                OptionalDouble.of(2.25), FuseRatings.between(1.51, 2.4), "2.5 A is too much, and UL 248-14 has 2.25 A");
        assertEquals(OptionalDouble.of(3), FuseRatings.between(2.1, 3.1), "3.15 A is too much, and blades have 3 A");
        assertEquals(OptionalDouble.of(0.1), FuseRatings.between(0, 5));
        assertEquals(OptionalDouble.of(25), FuseRatings.between(16, 100));
        assertEquals(OptionalDouble.empty(), FuseRatings.between(23, 100));
    }

    @Test
    void theGreatestThatGuards() {
        assertEquals(OptionalDouble.of(1.6), FuseRatings.atMost(1.75));
        assertEquals(OptionalDouble.of(5), FuseRatings.atMost(5));
        assertEquals(OptionalDouble.empty(), FuseRatings.atMost(0.09));
    }
}
