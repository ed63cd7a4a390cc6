package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class EmberPaintTest {
    private static final int PIXELS = 20;

    private static float[] painted(Paint paint, double seconds) {
        return Places.painted(paint, Moments.after(seconds), PIXELS);
    }

    private static Paint ember(long seed) {
        return new EmberPaint(1500, 400, 4, 2, 1.5, seed).make();
    }

    @Test
    void theSameSeedBurnsTheSame() {
        Paint one = ember(3);
        Paint other = ember(3);
        for (int frame = 0; frame < 300; frame++) {
            assertArrayEquals(painted(one, frame / 60.0), painted(other, frame / 60.0), 0f);
        }
        assertFalse(Arrays.equals(painted(one, 5), painted(ember(4), 5)));
    }

    @Test
    void theRateOfTheFramesDoesNotMatter() {
        Paint often = ember(3);
        Paint seldom = ember(3);
        for (int frame = 0; frame <= 600; frame++) {
            painted(often, frame / 120.0);
        }
        for (int frame = 0; frame <= 5; frame++) {
            painted(seldom, frame);
        }
        assertArrayEquals(painted(often, 5), painted(seldom, 5), 0f);
    }

    @Test
    void aLookThatComesOnAgainBurnsAnew() {
        Paint ember = ember(3);
        float[] first = painted(ember, 0);
        painted(ember, 4);
        assertArrayEquals(first, painted(ember, 0), 0f);
    }

    @Test
    void itGlowsFromTheFirstFrameOnAndStaysWithinLight() {
        Paint ember = ember(3);
        for (int frame = 0; frame < 600; frame++) {
            float brightest = 0;
            for (float value : painted(ember, frame / 60.0)) {
                assertTrue(value >= 0 && value <= 1, value + " is no light");
            }
            float[] rgba = painted(ember, frame / 60.0);
            for (int i = 0; i < PIXELS; i++) {
                brightest = Math.max(brightest, rgba[4 * i]);
                assertTrue(rgba[4 * i] >= rgba[4 * i + 1] && rgba[4 * i + 1] >= rgba[4 * i + 2], "red before blue");
            }
            assertTrue(brightest > 0, "dark in frame " + frame);
        }
    }

    @Test
    void whatHasBeenDarkForLongIsCaughtUpWithInOneFrame() {
        Paint ember = ember(3);
        painted(ember, 0);
        float[] after = painted(ember, 86_400);
        float[] next = painted(ember, 86_400);
        assertArrayEquals(after, next, 0f);
    }
}
