package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import dev.lampwright.colour.CssColour;
import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import java.util.List;
import org.junit.jupiter.api.Test;

class LookSpecTest {
    private static LayerSpec layer(int pixel, String rhythm) {
        return new LayerSpec(
                Zone.run(pixel, pixel),
                new SolidPaint(CssColour.colour("white")),
                new AllExtent(),
                Rhythm.parse(rhythm),
                Level.fixed(1),
                Blend.NORMAL);
    }

    private static LookSpec look(String... rhythms) {
        List<LayerSpec> layers = List.of(layer(0, rhythms[0]), layer(1, rhythms[1]));
        return new LookSpec("two", layers, List.of(Level.fixed(0.5), Level.by(Follow.of(Signal.JOB_PROGRESS))), true);
    }

    private static Canvas drawn(LookSpec look, Moment moment) {
        Canvas canvas = new Canvas(2, 2);
        look.make().draw(moment, canvas, fault -> fail(fault.toString()));
        return canvas;
    }

    @Test
    void makesTheLookItDescribes() {
        LookSpec spec = look("F", "F");
        assertEquals("two", spec.make().name());
        assertTrue(spec.make().steadyForCamera());
        Canvas canvas = drawn(spec, Moments.done(0.25));
        assertArrayEquals(new float[] {1, 1, 1, 1, 1, 1, 1, 1}, canvas.rgba(), 1e-5f);
        assertArrayEquals(new float[] {0.5f, 0.25f}, canvas.dimmers(), 1e-5f);
    }

    /** A level that follows an unknown signal is dark. */
    @Test
    void anUnknownSignalGivesNoLight() {
        assertEquals(0, drawn(look("F", "F"), Moments.after(1)).dimmers()[1]);
    }

    @Test
    void oneLayerCanBeLeftOut() {
        LookSpec left = look("Iso 2s", "F").without(0);
        assertEquals(1, left.layers().size());
        assertEquals(0, drawn(left, Moments.after(0.5)).rgba()[0]);
        assertEquals(1, drawn(left, Moments.after(0.5)).rgba()[4], 1e-5f);
    }

    @Test
    void flashesIfOneOfItsRhythmsDoes() {
        assertFalse(look("F", "swell 4s").flashes());
        assertTrue(look("F", "Iso 2s").flashes());
        assertTrue(look("Q", "F").flashes());
    }

    /** A still moment, as while pictures are taken, shows everything that a rhythm would show at some time. */
    @Test
    void rhythmsAreLitWhileLightIsToKeepStill() {
        Moment moment = Moments.after(1.5);
        Canvas canvas = new Canvas(2, 2);
        Look look = look("Iso 2s", "swell 4s").make();
        look.draw(moment, canvas, fault -> fail(fault.toString()));
        assertEquals(0, canvas.rgba()[0], 1e-5f);
        moment.keepSteady(true);
        look.draw(moment, canvas, fault -> fail(fault.toString()));
        assertArrayEquals(new float[] {1, 1, 1, 1, 1, 1, 1, 1}, canvas.rgba(), 1e-5f);
    }
}
