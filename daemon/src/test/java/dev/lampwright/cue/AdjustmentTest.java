package dev.lampwright.cue;

import static dev.lampwright.testing.Bounds.assertBelow;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Canvas;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signals;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class AdjustmentTest {
    private static final long MS = 1_000_000;

    private final Canvas light = new Canvas(4, 2);
    private final Situation situation = new Situation(new Signals(22));
    private final Adjustment adjustment = new Adjustment(new Canvas(4, 2));

    @BeforeEach
    void someLight() {
        Arrays.fill(light.rgba(), 0.8f);
        light.dimmers()[0] = 0.6f;
        light.dimmers()[1] = 0.2f;
    }

    private Canvas at(long ms, Wishes wishes, AlarmState alarm) {
        situation.moveTo(PrinterStatus.nothingHeard(), PrinterState.IDLE, ms * MS);
        situation.take(wishes, alarm);
        return adjustment.adjust(light, situation);
    }

    private Canvas at(long ms, Wishes wishes) {
        return at(ms, wishes, AlarmState.NORMAL);
    }

    @Test
    void nothingAskedForChangesNothing() {
        assertArrayEquals(light.rgba(), at(0, Wishes.NONE).rgba());
        assertArrayEquals(light.dimmers(), at(20, Wishes.NONE).dimmers());
    }

    @Test
    void brightnessIsTakenUpWithinHalfASecondAndLeavesWhiteLightAlone() {
        Wishes half = Wishes.NONE.withBrightness(0.5);
        at(0, Wishes.NONE);
        float before = 0.8f;
        for (int ms = 16; ms < 250; ms += 16) {
            float now = at(ms, half).rgba()[0];
            assertTrue(now < before && before - now <= 0.8f * 0.033f, now + " after " + before);
            before = now;
        }
        Canvas shown = at(266, half);
        assertEquals(0.4f, shown.rgba()[5], 1e-6f);
        assertArrayEquals(light.dimmers(), shown.dimmers());
    }

    @Test
    void theFirstFrameHasItAll() {
        assertEquals(0.4f, at(0, Wishes.NONE.withBrightness(0.5)).rgba()[0], 1e-6f);
    }

    @Test
    void pixelsChangeInOneFrameAndGoBackWhenTheirTimeIsUp() {
        float[] own = new float[16];
        Arrays.fill(own, Float.NaN);
        own[4] = 0.1f;
        own[5] = 0.2f;
        own[6] = 0.3f;
        own[7] = 1;
        Wishes wishes = Wishes.NONE.withPixels(own, 1000 * MS);
        at(0, Wishes.NONE);
        Canvas shown = at(16, wishes);
        assertArrayEquals(new float[] {0.8f, 0.1f, 0.2f, 0.3f, 1, 0.8f}, Arrays.copyOfRange(shown.rgba(), 3, 9));
        assertEquals(0.8f, at(1000, wishes).rgba()[4]);
    }

    @Test
    void pixelsForAnotherStripDoNothing() {
        assertArrayEquals(
                light.rgba(),
                at(0, Wishes.NONE.withPixels(new float[8], 1000 * MS)).rgba());
    }

    @Test
    void anAlarmGoesBeforeAllThatIsAskedFor() {
        float[] dark = new float[16];
        Wishes wishes = Wishes.NONE.withBrightness(0).withQuiet(0.1).withPixels(dark, 9000 * MS);
        assertEquals(0, at(0, wishes).rgba()[0]);
        Canvas shown = at(16, wishes, AlarmState.ALERT);
        assertEquals(0.8f * Adjustment.LEAST_IN_ALARM, shown.rgba()[0], 1e-6f);
        assertEquals(0.06f, shown.dimmers()[0], 1e-6f);
    }

    @Test
    void theNightDimsAllLight() {
        Canvas shown = at(0, Wishes.NONE.withQuiet(0.25));
        assertEquals(0.2f, shown.rgba()[0], 1e-6f);
        assertEquals(0.15f, shown.dimmers()[0], 1e-6f);
    }

    @Test
    void aWhiteLightKeepsItsOwnLevelUntilItIsGivenBack() {
        Wishes own = Wishes.NONE.withLevels(new float[] {1, Float.NaN});
        at(0, Wishes.NONE);
        float half = at(250, own).dimmers()[0];
        assertTrue(half > 0.7f && half < 0.9f, "on its way: " + half);
        Canvas shown = at(600, own);
        assertEquals(1, shown.dimmers()[0], 1e-6f);
        assertEquals(0.2f, shown.dimmers()[1], 1e-6f);
        assertEquals(0.6f, at(2000, Wishes.NONE).dimmers()[0], 1e-6f);
    }

    private static Wishes fading(Wishes wishes, Wish wish, float... seconds) {
        return wishes.with(wish, seconds);
    }

    @Test
    void aLevelTakesAsLongAsItIsToThereAndBack() {
        Wishes dim = fading(Wishes.NONE.withBrightness(0.5), Wish.BRIGHTNESS_FADE, 10);
        at(0, Wishes.NONE);
        at(16, dim);
        for (int s = 1; s < 10; s++) {
            assertEquals(0.8f * (1 - 0.05f * s), at(16 + 1000 * s - 16, dim).rgba()[0], 1e-3f);
        }
        assertFalse(adjustment.isSettled());
        assertEquals(0.4f, at(10_016, dim).rgba()[0], 1e-6f);
        assertTrue(adjustment.isSettled());
        Wishes back = fading(Wishes.NONE, Wish.BRIGHTNESS_FADE, 4);
        at(20_000, dim);
        at(20_016, back);
        assertEquals(0.6f, at(22_000, back).rgba()[0], 2e-3f);
        assertEquals(0.8f, at(24_016, back).rgba()[0], 1e-6f);
    }

    @Test
    void withoutAFadeItIsOneFrame() {
        at(0, Wishes.NONE);
        Wishes all = fading(
                fading(Wishes.NONE.withBrightness(0.5), Wish.BRIGHTNESS_FADE, 0).withLevels(new float[] {Float.NaN, 1}),
                Wish.LEVELS_FADE,
                Float.NaN,
                0);
        Canvas shown = at(16, all);
        assertEquals(0.4f, shown.rgba()[0], 1e-6f);
        assertEquals(1, shown.dimmers()[1], 1e-6f);
        assertEquals(0.6f, shown.dimmers()[0], 1e-6f);
    }

    /** So long that a frame's share of the change is lost against the level itself, in floats. */
    @Test
    void theLongestFadeOfTheLeastChangeArrives() {
        Wishes from = Wishes.NONE.withBrightness(0.9);
        Wishes to = fading(Wishes.NONE.withBrightness(0.901), Wish.BRIGHTNESS_FADE, 600);
        at(0, from);
        for (long ms = 4; ms <= 300_000; ms += 4) {
            at(ms, to);
        }
        assertEquals(0.8f * 0.9005f, at(300_004, to).rgba()[0], 1e-6f);
        for (long ms = 300_008; ms <= 600_008; ms += 4) {
            at(ms, to);
        }
        assertEquals(0.8f * 0.901f, at(600_012, to).rgba()[0], 1e-7f);
    }

    /** Another wish meanwhile neither shortens nor prolongs it. */
    @Test
    void aFadeGoesOnWhileSomethingElseIsAskedFor() {
        Wishes dim = fading(Wishes.NONE.withBrightness(0.5), Wish.BRIGHTNESS_FADE, 10);
        at(0, Wishes.NONE);
        at(16, dim);
        Wishes other = Wishes.NONE.withBrightness(0.5).withLevels(new float[] {1, Float.NaN});
        assertEquals(0.6f, at(5_000, other).rgba()[0], 1e-3f);
    }

    private static float[] pixel(int which, float light) {
        float[] own = new float[16];
        Arrays.fill(own, Float.NaN);
        Arrays.fill(own, 4 * which, 4 * which + 3, light);
        own[4 * which + 3] = 1;
        return own;
    }

    @Test
    void pixelsFadeFromWhateverIsThere() {
        Wishes first = fading(Wishes.NONE.withPixels(pixel(1, 0), Long.MAX_VALUE / 2), Wish.PIXELS_FADE, 2);
        at(0, Wishes.NONE);
        at(0, first);
        assertEquals(0.4f, at(1000, first).rgba()[4], 1e-6f, "half of the look's light is left");
        assertFalse(adjustment.isSettled());
        Wishes second = fading(Wishes.NONE.withPixels(pixel(2, 0.2f), Long.MAX_VALUE / 2), Wish.PIXELS_FADE, 4);
        at(1000, second);
        Canvas shown = at(3000, second);
        assertEquals(0.6f, shown.rgba()[4], 1e-6f, "half way back to the look");
        assertEquals(0.5f, shown.rgba()[8], 1e-6f, "half way from the look");
        shown = at(6000, second);
        assertTrue(adjustment.isSettled());
        assertEquals(0.8f, shown.rgba()[4]);
        assertEquals(0.2f, shown.rgba()[8]);
        shown = at(6016, Wishes.NONE);
        assertEquals(0.8f, shown.rgba()[8], "in one frame, for nobody said how long");
    }

    /** Wishes that are made again, for example by another ask or from a recording, are different arrays with the same contents. */
    @Test
    void theSamePixelsAgainDoNotBeginAnew() {
        at(0, Wishes.NONE);
        for (int ms = 0; ms <= 2000; ms += 100) {
            Wishes same = fading(Wishes.NONE.withPixels(pixel(1, 0), Long.MAX_VALUE / 2), Wish.PIXELS_FADE, 2);
            at(ms, same);
        }
        assertEquals(0, shownAt(2000)[4], 1e-6f);
    }

    private float[] shownAt(long ms) {
        return at(ms, fading(Wishes.NONE.withPixels(pixel(1, 0), Long.MAX_VALUE / 2), Wish.PIXELS_FADE, 2))
                .rgba();
    }

    @Test
    void anAlarmDoesNotWaitForAFade() {
        Wishes dark = fading(Wishes.NONE.withBrightness(0), Wish.BRIGHTNESS_FADE, 0);
        at(0, dark);
        Wishes slow = fading(Wishes.NONE.withBrightness(1), Wish.BRIGHTNESS_FADE, 600);
        at(16, slow);
        assertEquals(0.8f, at(32, slow, AlarmState.ALERT).rgba()[0], 1e-6f);
    }

    @Test
    void anotherGoesOnWithAFade() {
        Wishes first = fading(Wishes.NONE.withPixels(pixel(1, 0), Long.MAX_VALUE / 2), Wish.PIXELS_FADE, 2);
        at(0, Wishes.NONE);
        at(0, first);
        at(1000, first);
        Adjustment next = new Adjustment(new Canvas(4, 2));
        next.takeOver(adjustment);
        assertEquals(0.4f, next.adjust(light, situation).rgba()[4], 1e-6f);
    }

    @Test
    void anotherGoesOnWhereOneStands() {
        at(0, Wishes.NONE.withBrightness(0.5).withLevels(new float[] {1, 1}));
        Adjustment next = new Adjustment(new Canvas(4, 2));
        next.takeOver(adjustment);
        Canvas shown = next.adjust(light, situation);
        assertEquals(0.4f, shown.rgba()[0], 1e-6f);
        assertEquals(1, shown.dimmers()[1], 1e-6f);
    }

    @Test
    void allocatesNothing() {
        Wishes wishes = Wishes.NONE
                .withBrightness(0.5)
                .withLevels(new float[] {1, 0})
                .withPixels(new float[16], Long.MAX_VALUE / 2)
                .with(Wish.PIXELS_FADE, new float[] {500})
                .with(Wish.BRIGHTNESS_FADE, new float[] {500});
        for (int i = 0; i < 20_000; i++) {
            at(i, wishes);
        }
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 20_000; i < 30_000; i++) {
            at(i, wishes);
        }
        assertBelow(5_000, threads.getCurrentThreadAllocatedBytes() - before);
    }
}
