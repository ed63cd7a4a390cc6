package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BrightnessScaleTest {
    /** CIE 15, CIE 1976 L* of a luminance factor: 18.42 % is L* 50, 100 % is 100 (from memory). */
    @Test
    void halfWayUpIsLessThanAFifthOfTheLight() {
        assertEquals(0.1842, BrightnessScale.share(BrightnessScale.STEPS / 2), 1e-4);
        assertEquals(1, BrightnessScale.share(BrightnessScale.STEPS), 1e-12);
    }

    /** The other direction of the formula in CIE 15. */
    @Test
    void stepsAreEvenInLightness() {
        for (int step = 1; step <= BrightnessScale.STEPS; step++) {
            double y = BrightnessScale.share(step);
            double lightness = y > Math.pow(6.0 / 29, 3) ? 116 * Math.cbrt(y) - 16 : Math.pow(29.0 / 3, 3) * y;
            assertEquals(100.0 * step / BrightnessScale.STEPS, lightness, 1e-9);
        }
    }

    @Test
    void theHighestStepIsWithinTheLevel() {
        for (int level = 1; level <= 255; level++) {
            int highest = BrightnessScale.highest(level);
            assertTrue(highest == 1 || Math.round(BrightnessScale.share(highest) * 255) <= level);
            assertTrue(
                    highest == BrightnessScale.STEPS || Math.round(BrightnessScale.share(highest + 1) * 255) > level);
        }
    }
}
