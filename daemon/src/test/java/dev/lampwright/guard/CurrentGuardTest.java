package dev.lampwright.guard;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CurrentGuardTest {
    private final SplittableRandom chance = new SplittableRandom(11);

    @Test
    void leavesWhatIsUnderTheCeilingAsItIs() {
        Frame frame = filled(30, 100);
        CurrentGuard guard = guard(setup(30, 500));
        guard.hold(frame);
        assertArrayEquals(filled(30, 100).strip(), frame.strip());
        assertEquals(0, guard.dimmedFrames());
    }

    /** 30 pixels × (1 + 3 × 12) mA = 1110 mA at full white: dimmed in the same frame that demands it. */
    @Test
    void dimsAtOnce() {
        CurrentGuard guard = guard(setup(30, 500));
        Frame frame = filled(30, 255);
        guard.hold(frame);
        assertAtMost(500, guard.milliamps(0));
        assertTrue(guard.milliamps(0) > 490, "no darker than need be: " + guard.milliamps(0));
        assertEquals(1, guard.dimmedFrames());
    }

    @Test
    void comesUpAgainGently() {
        CurrentGuard guard = guard(setup(30, 500));
        guard.hold(filled(30, 255));
        int before = 0;
        int frames = 0;
        while (before < 100) {
            Frame frame = filled(30, 100);
            guard.hold(frame);
            int level = frame.strip()[0] & 0xFF;
            assertTrue(level >= before && (before == 0 || level - before <= 2), before + " to " + level);
            before = level;
            frames++;
        }
        assertTrue(frames > 30, frames + " frames");
    }

    /** README, Metrics: frames dimmed for a ceiling. One frame that demands too much causes the following ones to be dimmed as well. */
    @Test
    void countsFramesThatAreDimmedAndNotThoseThatAskForTooMuch() {
        CurrentGuard guard = guard(setup(30, 500));
        guard.hold(filled(30, 100));
        assertEquals(0, guard.dimmedFrames());
        guard.hold(filled(30, 255));
        assertEquals(1, guard.dimmedFrames());
        Frame within = filled(30, 100);
        guard.hold(within);
        assertTrue((within.strip()[0] & 0xFF) < 100, "within the ceiling, and dimmed by what came before");
        assertEquals(2, guard.dimmedFrames());
        guard.hold(filled(30, 0));
        assertEquals(2, guard.dimmedFrames(), "what is dark cannot be dimmed");
    }

    /** The dark strip's current counts: 30 pixels × 1 mA, and 36 mA for one white pixel. */
    @Test
    void allowsAFrameUpToTheCeilingWithTheDarkStripInIt() {
        Frame one = filled(30, 0);
        Arrays.fill(one.strip(), 0, 3, (byte) 255);
        assertTrue(guard(setup(30, 66)).allows(one));
        assertFalse(guard(setup(30, 65)).allows(one));
        assertFalse(guard(setup(30, 36)).allows(one));
    }

    /** A dark frame draws the minimum, so it may be sent even if the dark strip alone is too much. */
    @Test
    void allowsTheDark() {
        assertTrue(guard(setup(30, 20)).allows(filled(30, 0)));
        Frame faint = filled(30, 0);
        faint.strip()[89] = 1;
        assertFalse(guard(setup(30, 20)).allows(faint));
        assertFalse(guard(setup(30, 30)).allows(faint));
    }

    @Test
    void theDarkStripIsOverTheCeilingByWhatIsMissing() {
        assertEquals(0, guard(setup(30, 30)).darkOverMilliamps());
        assertEquals(1, guard(setup(30, 29)).darkOverMilliamps());
        assertEquals(0, guard(setup(30, 500)).darkOverMilliamps());
    }

    @Test
    void refusesARateAndARiseThatAreOutOfRange() {
        Ranks ranks = Ranks.alike(30, 0);
        assertThrows(IllegalArgumentException.class, () -> new CurrentGuard(setup(30, 500), ranks, 0, 2));
        assertThrows(IllegalArgumentException.class, () -> new CurrentGuard(setup(30, 500), ranks, 60, 0));
        assertThrows(IllegalArgumentException.class, () -> new CurrentGuard(setup(30, 500), ranks, 60, -1));
        assertThrows(IllegalArgumentException.class, () -> new CurrentGuard(setup(30, 500), ranks, 60, Double.NaN));
        assertDoesNotThrow(() -> new CurrentGuard(setup(30, 500), ranks, 1, 1e-3));
    }

    /**
     * Any frames in any order: never over the ceiling, by a separate calculation in floating point instead of the guard's whole numbers.
     */
    @Test
    void isNeverOverTheCeiling() {
        for (int trial = 0; trial < 300; trial++) {
            int pixels = 1 + chance.nextInt(40);
            int ceiling = pixels + chance.nextInt(pixels * 40);
            CurrentGuard guard = guard(setup(pixels, ceiling));
            for (int i = 0; i < 60; i++) {
                Frame frame = filled(pixels, chance.nextInt(256));
                guard.hold(frame);
                double sum = 0;
                for (byte value : frame.strip()) {
                    sum += (value & 0xFF) / 255.0 * 12;
                }
                assertTrue(pixels + sum <= ceiling + 1e-6, pixels + sum + " mA of " + ceiling);
                assertEquals(Math.ceil(pixels + sum - 1e-6), guard.milliamps(0), 1e-9);
            }
        }
    }

    @Test
    void isDarkWhereTheDarkStripAloneIsTooMuch() {
        CurrentGuard guard = guard(setup(30, 20));
        Frame frame = filled(30, 255);
        guard.hold(frame);
        assertArrayEquals(new byte[90], frame.strip());
        assertEquals(10, guard.darkOverMilliamps());
    }

    @Test
    void holdsEachSupplyByItself() {
        Setup setup = new Setup(
                10,
                "GRB",
                List.of(12_000, 12_000, 12_000),
                1000,
                0,
                3000,
                WhenSilent.DARK,
                List.of(5000, 400),
                List.of(new Setup.Dimmer(1, 800, 0)));
        CurrentGuard guard = guard(setup);
        Frame frame = new Frame(30, 1);
        Arrays.fill(frame.strip(), (byte) 255);
        frame.duties()[0] = 65_535;
        guard.hold(frame);
        assertEquals(255, frame.strip()[0] & 0xFF);
        assertAtMost(400, guard.milliamps(1));
        assertAtLeast(399, guard.milliamps(1));
        assertEquals(32_767, frame.duties()[0], 1);
    }

    private static CurrentGuard guard(Setup setup) {
        return new CurrentGuard(
                setup, Ranks.alike(setup.pixels(), setup.dimmers().size()), 60, 2);
    }

    private static Setup setup(int pixels, int ceiling) {
        List<Integer> currents = List.of(12_000, 12_000, 12_000);
        return new Setup(pixels, "GRB", currents, 1000, 0, 3000, WhenSilent.DARK, List.of(ceiling), List.of());
    }

    private static Frame filled(int pixels, int level) {
        Frame frame = new Frame(3 * pixels, 0);
        Arrays.fill(frame.strip(), (byte) level);
        return frame;
    }
}
