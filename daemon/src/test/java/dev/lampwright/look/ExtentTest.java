package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Light that moves by less than a pixel: none is gained or lost, and nothing jumps. The calculation of each limit is next to its check. */
class ExtentTest {
    private static final Follow PROGRESS = Follow.of(Signal.JOB_PROGRESS);
    private static final int PIXELS = 24;
    private static final int STEPS = 1000;
    private static final double EXACT = 1e-4;

    private static float[] cover(Extent extent, Moment moment) {
        return Places.covered(extent, moment, PIXELS);
    }

    private static double sum(float[] cover) {
        double sum = 0;
        for (float value : cover) {
            assertTrue(value >= 0 && value <= 1, value + " is no cover");
            sum += value;
        }
        return sum;
    }

    /** An edge that moves by d pixels changes no pixel by more than d. */
    private static void assertNoStep(float[] before, float[] after, double moved) {
        for (int i = 0; i < PIXELS; i++) {
            assertEquals(before[i], after[i], moved + EXACT, "pixel " + i);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 1, 4, 100})
    void aBarCoversWhatTheSignalSays(double softness) {
        Extent bar = new BarExtent(PROGRESS, softness).make();
        float[] before = cover(bar, Moments.done(0));
        for (int step = 0; step <= STEPS; step++) {
            double share = (double) step / STEPS;
            float[] now = cover(bar, Moments.done(share));
            assertEquals(share * PIXELS, sum(now), EXACT);
            assertNoStep(before, now, 2.0 * PIXELS / STEPS);
            before = now;
        }
        assertEquals(1, before[PIXELS - 1], EXACT);
    }

    @ParameterizedTest
    @CsvSource({"1, 0", "1.5, 0", "3, 2", "0.4, 0", "2, 5"})
    void aPointerIsAlwaysWhole(double width, double softness) {
        Extent pointer = new PointerExtent(PROGRESS, width, softness).make();
        float[] before = cover(pointer, Moments.done(0));
        for (int step = 0; step <= STEPS; step++) {
            float[] now = cover(pointer, Moments.done((double) step / STEPS));
            assertEquals(width, sum(now), EXACT);
            assertNoStep(before, now, (double) PIXELS / STEPS);
            before = now;
        }
    }

    @Test
    void aPointerStandsWhereTheSignalSays() {
        float[] cover = cover(new PointerExtent(PROGRESS, 2, 0).make(), Moments.done(0.5));
        for (int i = 0; i < PIXELS; i++) {
            assertEquals(i == 11 || i == 12 ? 1 : 0, cover[i], EXACT);
        }
    }

    @Test
    void aPointerWiderThanTheZoneFillsIt() {
        assertEquals(PIXELS, sum(cover(new PointerExtent(PROGRESS, 100, 0).make(), Moments.done(0.9))), EXACT);
    }

    @Test
    void nothingIsCoveredWhileTheSignalIsUnknown() {
        assertEquals(0, sum(cover(new BarExtent(PROGRESS, 1).make(), Moments.after(3))));
        assertEquals(0, sum(cover(new PointerExtent(PROGRESS, 2, 1).make(), Moments.after(3))));
    }

    /** A band's light is that of its front, a rising straight line, its width, and its tail, a falling square: s/2 + w + t/3. */
    @ParameterizedTest
    @CsvSource({
        "2, 0, 0, 0, 3",
        "2, 6, 0, 1, 3",
        "0.5, 0, 0, 0, -1.7",
        "3, 4, 12, 2, 5",
        "1, 2, 8, 0, -5",
        "4, 8, 0, 6, 0.2"
    })
    void aBandKeepsItsLight(double width, double tail, double repeat, double softness, double speed) {
        Extent band =
                new BandExtent(width, tail, repeat, new Motion(speed, Motion.Unit.PIXELS_A_SECOND), softness).make();
        double bands = repeat > 0 ? PIXELS / repeat : 1;
        double light = bands * (softness / 2 + width + tail / 3);
        float[] before = cover(band, Moments.after(0));
        double pause = 0.01;
        for (int step = 0; step < 3000; step++) {
            float[] now = cover(band, Moments.after(step * pause));
            assertEquals(light, sum(now), EXACT * PIXELS);
            assertNoStep(before, now, Math.abs(speed) * pause);
            before = now;
        }
    }

    @Test
    void aBandThatGoesBackIsTheSameFromTheOtherEnd() {
        for (int step = 0; step < 500; step++) {
            Moment moment = Moments.after(step * 0.037);
            float[] there = cover(new BandExtent(2, 5, 0, Motion.cycle(7), 1).make(), moment);
            float[] back = cover(new BandExtent(2, 5, 0, Motion.cycle(-7), 1).make(), moment);
            for (int i = 0; i < PIXELS; i++) {
                assertEquals(there[i], back[PIXELS - 1 - i], EXACT);
            }
        }
    }

    @Test
    void aBandGoesRoundInItsCycle() {
        Extent band = new BandExtent(2, 5, 0, Motion.cycle(7), 1).make();
        assertArrayEquals(cover(band, Moments.after(1.25)), cover(band, Moments.after(1.25 + 7)), 1e-4f);
        assertArrayEquals(cover(band, Moments.after(1.25)), cover(band, Moments.after(1.25 + 7 * 100_000)), 1e-3f);
    }

    @Test
    void theTailIsBehind() {
        float[] cover =
                cover(new BandExtent(1, 6, 0, new Motion(1, Motion.Unit.PIXELS_A_SECOND), 0).make(), Moments.after(12));
        assertEquals(1, cover[11], EXACT);
        for (int i = 10; i >= 5; i--) {
            assertTrue(cover[i] < cover[i + 1] && cover[i] > 0, "pixel " + i);
        }
        assertEquals(0, cover[12], EXACT);
        assertEquals(0, cover[4], EXACT);
    }
}
