package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Interpolation;
import dev.lampwright.colour.Light;
import dev.lampwright.colour.Stop;
import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import java.util.List;
import org.junit.jupiter.api.Test;

class PaintTest {
    private static final Gradient HEAT = Gradient.flowing(
            Stop.evenly(List.of(CssColour.colour("blue"), CssColour.colour("red"))), Interpolation.OKLAB);

    private static float[] painted(Paint paint, Moment moment, int pixels) {
        return Places.painted(paint, moment, pixels);
    }

    @Test
    void solidIsTheColourWithItsAlpha() {
        float[] rgba = painted(new SolidPaint(CssColour.colour("rgb(0 255 0 / 50%)")).make(), Moments.after(0), 3);
        assertArrayEquals(new float[] {0, 1, 0, 0.5f, 0, 1, 0, 0.5f, 0, 1, 0, 0.5f}, rgba, 1e-5f);
    }

    @Test
    void aScaleIsTheColourOfTheSignal() {
        Paint scale = new ScalePaint(HEAT, Follow.of(Signal.JOB_PROGRESS)).make();
        assertArrayEquals(new float[] {1, 0, 0, 1}, painted(scale, Moments.done(1), 1), 1e-5f);
        assertArrayEquals(new float[] {0, 0, 1, 1}, painted(scale, Moments.done(0), 1), 1e-5f);
        assertArrayEquals(new float[] {0, 0, 1, 1}, painted(scale, Moments.after(0), 1), 1e-5f);
    }

    /** Halfway between blue and red, as a CSS engine has it: color-mix(in oklab, blue, red), from the colour library's own gradient. */
    @Test
    void aRampRunsFromTheZonesBeginning() {
        float[] rgba = painted(new RampPaint(HEAT, Motion.STILL).make(), Moments.after(9), 3);
        Light middle = CssColour.parse("oklab(53.998% 0.0962 -0.0928)");
        assertEquals(middle.red(), rgba[4], 2e-3);
        assertEquals(middle.green(), rgba[5], 2e-3);
        assertEquals(middle.blue(), rgba[6], 2e-3);
        assertEquals(rgba[8], Math.max(rgba[0], rgba[8]));
        assertEquals(rgba[2], Math.max(rgba[2], rgba[10]));
    }

    @Test
    void aDriftingRampGoesRound() {
        Paint ramp = new RampPaint(HEAT, Motion.cycle(8)).make();
        float[] start = painted(ramp, Moments.after(0), 8);
        float[] later = painted(ramp, Moments.after(1), 8);
        for (int i = 0; i < 8; i++) {
            assertEquals(start[4 * i], later[4 * ((i + 1) % 8)], 1e-5);
        }
        assertArrayEquals(start, painted(ramp, Moments.after(8), 8), 1e-4f);
    }
}
