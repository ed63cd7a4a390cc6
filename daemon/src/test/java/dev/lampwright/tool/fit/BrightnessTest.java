package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BrightnessTest {
    /** CIE 15, CIE 1976 L* of a luminance factor: 18.42 % is L* 50, 100 % is 100 (from memory). */
    @Test
    void halfWayUpIsLessThanAFifthOfTheLight() {
        assertEquals(0.1842, Brightness.share(Brightness.STEPS / 2), 1e-4);
        assertEquals(1, Brightness.share(Brightness.STEPS), 1e-12);
    }

    /** The other direction of the formula in CIE 15. */
    @Test
    void stepsAreEvenInLightness() {
        for (int step = 1; step <= Brightness.STEPS; step++) {
            double y = Brightness.share(step);
            double lightness = y > Math.pow(6.0 / 29, 3) ? 116 * Math.cbrt(y) - 16 : Math.pow(29.0 / 3, 3) * y;
            assertEquals(100.0 * step / Brightness.STEPS, lightness, 1e-9);
        }
    }

    @Test
    void theHighestStepIsWithinTheLevel() {
        for (int level = 1; level <= 255; level++) {
            int highest = Brightness.highest(level);
            assertTrue(highest == 1 || Math.round(Brightness.share(highest) * 255) <= level);
            assertTrue(highest == Brightness.STEPS || Math.round(Brightness.share(highest + 1) * 255) > level);
        }
    }
}
