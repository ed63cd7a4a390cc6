package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CanvasTest {
    private static Canvas filled(float light, float dimmer) {
        Canvas canvas = new Canvas(1, 2);
        Arrays.fill(canvas.rgba(), light);
        Arrays.fill(canvas.dimmers(), dimmer);
        return canvas;
    }

    private static void assertLight(float light, float dimmer, Canvas canvas) {
        assertArrayEquals(filled(light, dimmer).rgba(), canvas.rgba(), 1e-6f);
        assertArrayEquals(filled(light, dimmer).dimmers(), canvas.dimmers(), 1e-6f);
    }

    @Test
    void stripAndDimmersAreClearedCopiedMixedAndDimmedTogether() {
        Canvas canvas = filled(0.8f, 0.4f);
        canvas.mix(filled(0.4f, 0.8f), 0.25f);
        assertLight(0.7f, 0.5f, canvas);
        canvas.dim(0.5f);
        assertLight(0.35f, 0.25f, canvas);
        Canvas copy = new Canvas(1, 2);
        copy.copyFrom(canvas);
        canvas.clear();
        assertLight(0, 0, canvas);
        assertLight(0.35f, 0.25f, copy);
    }

    @Test
    void hasFourFloatsForEachPixel() {
        Canvas canvas = new Canvas(3, 2);
        assertEquals(12, canvas.rgba().length);
        assertEquals(2, canvas.dimmers().length);
        assertTrue(canvas.sameSizeAs(new Canvas(3, 2)));
        assertFalse(canvas.sameSizeAs(new Canvas(2, 2)));
        assertFalse(canvas.sameSizeAs(new Canvas(3, 1)));
    }

    @ParameterizedTest
    @ValueSource(floats = {0, 1, 0.5f, -0.0001f, 1.0001f})
    void lightIsANumberFromNoneToOneBesidesRounding(float light) {
        assertTrue(filled(light, 0).isSound());
        assertTrue(filled(0, light).isSound());
    }

    @ParameterizedTest
    @ValueSource(floats = {-0.01f, 1.01f, Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY})
    void nothingElseIsLight(float wrong) {
        Canvas strip = filled(0.5f, 0.5f);
        strip.rgba()[3] = wrong;
        assertFalse(strip.isSound());
        Canvas dimmer = filled(0.5f, 0.5f);
        dimmer.dimmers()[1] = wrong;
        assertFalse(dimmer.isSound());
    }

    /** A plain colour strip is a pixel beyond those of the addressable strip. */
    @Test
    void aCanvasHasRoomForPlainColourStrips() {
        Fitting.DimmerUse work = Fitting.DimmerUse.white("work");
        Fitting.DimmerUse red = new Fitting.DimmerUse("cove", 5, 0);
        Fitting.DimmerUse green = new Fitting.DimmerUse("cove", 5, 1);
        assertTrue(work.isWhite());
        assertFalse(new Fitting.DimmerUse("cove", 0, 0).isWhite());
        Fitting fitting = new Fitting(4, Map.of(), List.of(work, red, green));
        assertTrue(fitting.canvas().sameSizeAs(new Canvas(6, 3)));
        assertEquals(List.of("work", "cove"), fitting.dimmerNames());
        assertTrue(new Fitting(4, Map.of(), List.of(work)).canvas().sameSizeAs(new Canvas(4, 1)));
    }
}
