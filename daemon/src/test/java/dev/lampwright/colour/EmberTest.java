package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class EmberTest {
    private final float[] rgb = new float[3];

    /** The luminance falls with the temperature as that of the black body does, which has tests of its own. */
    @Test
    void brightnessIsThatOfTheBlackBody() {
        for (double brightest : new double[] {1200, 1600, 2700, 6500}) {
            Ember ember = Ember.of(brightest);
            double full = BlackBody.light(brightest).luminance();
            for (double kelvin = 0.4 * brightest + 300; kelvin <= brightest; kelvin += 7) {
                double share = BlackBody.luminance(kelvin) / BlackBody.luminance(brightest);
                ember.approach(kelvin, 1, rgb, 0);
                double shown = new Light(rgb[0], rgb[1], rgb[2]).luminance();
                assertEquals(full * share, shown, 0.005 * full * share + 1e-9, kelvin + " of " + brightest);
            }
        }
    }

    @Test
    void everyChannelCanBeShownAndOnlyGrows() {
        Ember ember = Ember.of(6500);
        float red = 0;
        for (double kelvin = 400; kelvin < 7000; kelvin += 3) {
            ember.approach(kelvin, 1, rgb, 0);
            assertTrue(rgb[0] >= red && rgb[0] <= 1, "red at " + kelvin);
            assertTrue(rgb[1] >= 0 && rgb[1] <= 1 && rgb[2] >= 0 && rgb[2] <= 1, "at " + kelvin);
            red = rgb[0];
        }
    }

    @Test
    void outsideIsTheNearerEnd() {
        Ember ember = Ember.of(1600);
        Light full = BlackBody.light(1600);
        ember.approach(5000, 1, rgb, 0);
        assertArrayEquals(new float[] {full.red(), full.green(), full.blue()}, rgb, 1e-6f);
        ember.approach(20, 1, rgb, 0);
        assertArrayEquals(new float[3], rgb, 1e-6f);
        ember.approach(Double.NaN, 1, rgb, 0);
        assertArrayEquals(new float[3], rgb, 1e-6f);
    }

    @Test
    void coldIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Ember.of(500));
        assertThrows(IllegalArgumentException.class, () -> Ember.of(Double.NaN));
    }
}
