package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Interpolation;
import dev.lampwright.colour.Stop;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Movement back and forth: it turns at the ends, nothing jumps there, and nothing is allocated. */
class TurningTest {
    private static final int PIXELS = 24;

    private static float[] cover(ExtentSpec extent, double seconds) {
        return Places.covered(extent.make(), Moments.after(seconds), PIXELS);
    }

    private static BandExtent band(double width, double tail, double softness, double cycle) {
        return new BandExtent(width, tail, 0, Motion.cycle(cycle).turning(), softness);
    }

    /** A band of four pixels travels 20 pixels and takes a cycle for each. */
    @Test
    void aBandGoesFromEndToEndAndBack() {
        BandExtent band = band(4, 0, 0, 5);
        assertLit(band, 0, 0);
        assertLit(band, 2.5, 10);
        assertLit(band, 5, 20);
        assertLit(band, 7.5, 10);
        assertLit(band, 10, 0);
        assertLit(band(4, 0, 0, -5), 0, 20);
        assertLit(band(4, 0, 0, -5), 5, 0);
    }

    private static void assertLit(BandExtent band, double seconds, int first) {
        float[] wanted = new float[PIXELS];
        for (int i = first; i < first + 4; i++) {
            wanted[i] = 1;
        }
        assertArrayEquals(wanted, cover(band, seconds), 1e-5f, seconds + " s");
    }

    @ParameterizedTest
    @CsvSource({"4, 0, 0", "2, 6, 0", "1, 12, 2", "0.5, 3, 1", "2, 40, 0"})
    void nothingJumps(double width, double tail, double softness) {
        BandExtent band = band(width, tail, softness, 5);
        double frame = 1.0 / 240;
        double moved = (PIXELS - width - 2 * softness) / 5 * frame;
        float[] before = cover(band, 0);
        for (int i = 1; i < 12 * 240; i++) {
            float[] now = cover(band, i * frame);
            for (int pixel = 0; pixel < PIXELS; pixel++) {
                assertTrue(now[pixel] >= 0 && now[pixel] <= 1);
                assertEquals(before[pixel], now[pixel], 3 * moved + 1e-4, "pixel " + pixel + " in frame " + i);
            }
            before = now;
        }
    }

    /** Halfway back, the tail is where the band came from, and the tail of the way there is fainter ahead of it. */
    @Test
    void theTailLiesWhereItCameFrom() {
        float[] back = cover(band(2, 8, 0, 5), 7.5);
        assertEquals(1, back[11], 1e-5);
        assertTrue(back[14] > 0.5, "behind it");
        assertTrue(back[15] < back[14] && back[16] < back[15]);
        assertEquals(0, back[4], 1e-5, "what it left on the way there is gone");
        float[] justTurned = cover(band(2, 8, 0, 5), 5.1);
        assertTrue(justTurned[20] > 0.5, "its own tail, which it goes back over");
    }

    @Test
    void aBandAsLongAsTheZoneStandsStill() {
        float[] full = new float[PIXELS];
        Arrays.fill(full, 1);
        assertArrayEquals(full, cover(band(PIXELS, 0, 0, 5), 0), 1e-5f);
        assertArrayEquals(full, cover(band(PIXELS, 0, 0, 5), 3), 1e-5f);
    }

    private static final Gradient COLOURS = Gradient.flowing(
            Stop.evenly(List.of(CssColour.colour("blue"), CssColour.colour("red"))), Interpolation.OKLAB);

    private static float[] painted(PaintSpec paint, double seconds) {
        return Places.painted(paint.make(), Moments.after(seconds), PIXELS);
    }

    @Test
    void aRampThatIsNotSpreadIsOneColourThatGoesFromFirstToLast() {
        RampPaint ramp = new RampPaint(COLOURS, Motion.cycle(10), 0);
        for (double seconds : new double[] {0, 2.5, 5, 9.9, 12}) {
            float[] rgba = painted(ramp, seconds);
            float[] wanted = new float[4];
            COLOURS.colourAndAlpha(seconds % 10 / 10, wanted, 0);
            for (int i = 0; i < rgba.length; i++) {
                assertEquals(wanted[i % 4], rgba[i], 1e-4, seconds + " s");
            }
        }
    }

    @Test
    void aRampShowsAsMuchAsItIsSpread() {
        float[] once = painted(new RampPaint(COLOURS, Motion.STILL), 3);
        float[] half = painted(new RampPaint(COLOURS, Motion.STILL, 0.5), 3);
        float[] twice = painted(new RampPaint(COLOURS, Motion.STILL, 2), 3);
        assertEquals(once[4 * 11], half[4 * (PIXELS - 1)], 0.05);
        assertEquals(twice[4 * 3], twice[4 * (PIXELS / 2 + 3)], 1e-4);
        assertArrayEquals(once, painted(new RampPaint(COLOURS, Motion.STILL, 1), 3), 0f);
    }

    @Test
    void aRampGoesToItsLastColoursAndBack() {
        RampPaint ramp = new RampPaint(COLOURS, Motion.cycle(4).turning(), 0.25);
        float[] start = painted(ramp, 0);
        float[] far = painted(ramp, 4);
        assertTrue(start[2] > start[0] && far[4 * PIXELS - 4] > far[4 * PIXELS - 2], "from blue to red");
        assertArrayEquals(start, painted(ramp, 8), 1e-5f);
        assertArrayEquals(far, painted(new RampPaint(COLOURS, Motion.cycle(-4).turning(), 0.25), 0), 1e-5f);
    }

    @Test
    void aPaletteGivesEachGrainOneColourForAsLongAsItIsLit() {
        PalettePaint palette = new PalettePaint(
                List.of(CssColour.colour("red"), CssColour.colour("lime"), CssColour.colour("blue")), 2, 5);
        Paint paint = palette.make();
        Extent grains = new GrainsExtent(0.5, 2, 5).make();
        float[] before;
        float[] now = new float[4 * PIXELS];
        int[] seen = new int[3];
        for (int frame = 0; frame < 3600; frame++) {
            before = now;
            now = Places.painted(paint, Moments.after(frame / 60.0), PIXELS);
            float[] cover = Places.covered(grains, Moments.after(frame / 60.0), PIXELS);
            for (int i = 0; i < PIXELS; i++) {
                for (int channel = 0; channel < 3; channel++) {
                    seen[channel] += now[4 * i + channel] > 0.5 ? 1 : 0;
                    assertTrue(frame == 0 || cover[i] < 0.01 || now[4 * i + channel] == before[4 * i + channel]);
                }
            }
        }
        for (int count : seen) {
            assertEquals(3600 * PIXELS / 3.0, count, 3600 * PIXELS * 0.06);
        }
    }

    /** A pixel begins a glint at most twice a second, and as many are lit at any time as with long ones. */
    @Test
    void shortGrainsOfAPixelKeepApart() {
        Extent grains = new GrainsExtent(0.05, 0.1, 3).make();
        int[] last = new int[PIXELS];
        boolean[] lit = new boolean[PIXELS];
        double light = 0;
        for (int frame = 0; frame < 120 * 240; frame++) {
            float[] cover = Places.covered(grains, Moments.after(frame / 240.0), PIXELS);
            for (int i = 0; i < PIXELS; i++) {
                light += cover[i];
                if (cover[i] > 0 && !lit[i]) {
                    assertTrue(last[i] == 0 || frame - last[i] >= 119, "after " + (frame - last[i]) + " frames");
                    last[i] = frame;
                }
                lit[i] = cover[i] > 0;
            }
        }
        assertEquals(0.025, light / PIXELS / 120 / 240, 0.003);
    }

    @Test
    void nothingIsAllocated() {
        Extent band = band(2, 6, 1, 5).make();
        Paint even = new RampPaint(COLOURS, Motion.cycle(3), 0).make();
        Paint window = new RampPaint(COLOURS, Motion.cycle(3).turning(), 0.4).make();
        Paint palette = new PalettePaint(List.of(CssColour.colour("red"), CssColour.colour("lime")), 0.3, 5).make();
        Extent grains = new GrainsExtent(0.5, 0.3, 5).make();
        Rhythm rhythm = Rhythm.parse("Q(6)+LFl 15s").withEdge(0.3).withPhase(0.4);
        float[] room = new float[4 * PIXELS];
        Cover cover = new Cover(PIXELS);
        Moment moment = Moments.after(0);
        Runnable frame = () -> {
            cover.begin(PIXELS);
            band.cover(moment, cover);
            even.paint(moment, cover, room);
            window.paint(moment, cover, room);
            palette.paint(moment, cover, room);
            grains.cover(moment, cover);
            room[0] = rhythm.level(moment.seconds());
        };
        for (int i = 0; i < 1000; i++) {
            moment.moveTo(i * 16_000_000L, 0);
            frame.run();
        }
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 1000; i++) {
            moment.moveTo(i * 16_000_000L, 0);
            frame.run();
        }
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(allocated < 200, allocated + " bytes");
    }
}
