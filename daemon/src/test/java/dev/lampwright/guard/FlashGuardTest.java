package dev.lampwright.guard;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/**
 * Sequences on both sides of each threshold of WCAG 2.x, success criterion 2.3.1. Source of the thresholds: the standard's "general flash
 * and red flash thresholds"; of red also WCAG 2.0's working definition. A frame sequence of a hundred and twenty frames in a second; a
 * letter is ten frames, so twelve letters are a second.
 */
class FlashGuardTest {
    private static final int RATE = 120;
    private static final int FRAMES_A_LETTER = 10;
    private static final Map<String, Zone> WHOLE = Map.of("strip", Zone.run(0, 9));
    private static final int[] BLACK = {0, 0, 0};
    private static final int[] WHITE = {255, 255, 255};

    private final Fitted fitted = Fitted.strip(10, WHOLE);

    @Test
    void threeFlashesInASecondPass() {
        assertPasses("010101000000", BLACK, WHITE);
        assertPasses("010101000000010101000000", BLACK, WHITE);
        assertPasses("101010111111", BLACK, WHITE);
    }

    /** Three a second for ever: six transitions in every window of a second, because each window includes both ends. */
    @Test
    void threeASecondWithoutEndPass() {
        assertPasses("001100110011".repeat(5), BLACK, WHITE);
    }

    @Test
    void theFourthFlashInASecondIsHeld() {
        assertIsHeldFrom(8, "01010101000000000", BLACK, WHITE);
    }

    /**
     * A transition counts for just one second. Lit at frames 10, 30, 50 and 70 and dark at 20, 40 and 60, light may go dark a fourth time
     * at frame 130, when that of frame 10 is a second old, and not a frame earlier.
     */
    @Test
    void theWindowSlides() {
        assertEquals(0, shownAt(130, 130));
        assertEquals(255, shownAt(129, 129));
    }

    private int shownAt(int frame, int darkFrom) {
        FlashGuard guard = guard(fitted);
        int shown = -1;
        for (int i = 0; i <= frame; i++) {
            boolean lit = i < darkFrom && (i >= 70 || i / FRAMES_A_LETTER % 2 == 1);
            Frame light = filled(lit ? WHITE : BLACK);
            hold(guard, fitted, light, i);
            shown = light.strip()[0] & 0xFF;
        }
        return shown;
    }

    /** Light that flashes four times a second or faster, lit or dark at first, is lit once it is held. */
    @Test
    void whatIsHeldIsLit() {
        for (int half = 1; half <= 15; half++) {
            for (int first = 0; first <= 1; first++) {
                FlashGuard guard = guard(fitted);
                for (int i = 0; i < 4 * RATE; i++) {
                    Frame frame = filled((i / half + first) % 2 == 0 ? WHITE : BLACK);
                    hold(guard, fitted, frame, i);
                    assertTrue(i < RATE || frame.strip()[0] == -1, "half period " + half + ", frame " + i);
                }
            }
        }
    }

    /** Even flashing of up to three a second is left alone, hard or soft. */
    @Test
    void whatIsWithinTheLimitIsLeftAlone() {
        for (int period = 40; period < 200; period += 3) {
            FlashGuard guard = guard(fitted);
            for (int i = 0; i < 6 * RATE; i++) {
                double wave = 0.5 + 0.5 * Math.sin(2 * Math.PI * i / period);
                int level = (int) (255 * (period % 2 == 0 ? wave : Math.round(wave)));
                Frame frame = filled(grey(level));
                hold(guard, fitted, frame, i);
                assertArrayEquals(filled(grey(level)).strip(), frame.strip(), "period " + period + ", frame " + i);
            }
        }
    }

    /** 10 % of full white is 25.5 of 255: 26 of 255 counts and 25 does not. */
    @Test
    void changesOfATenthCount() {
        assertPasses("01".repeat(12), grey(100), grey(125));
        assertIsHeldFrom(8, "01".repeat(12), grey(100), grey(126));
    }

    /** Exactly a tenth: 25 and 26 of 255 on two pixels, 51 of 510. */
    @Test
    void exactlyATenthCounts() {
        Fitted two = Fitted.strip(2, Map.of());
        byte[] tenth = {25, 25, 25, 26, 26, 26};
        byte[] less = {25, 25, 25, 25, 25, 25};
        assertEquals(8, firstHeld(two, "01".repeat(12), letter -> letter == '1' ? tenth : new byte[6]));
        assertEquals(-1, firstHeld(two, "01".repeat(12), letter -> letter == '1' ? less : new byte[6]));
    }

    /** 204 of 255 is 0.80: a darker image of 0.80 is not a flash, one of 203 is. */
    @Test
    void onlyBelowPointEightCounts() {
        assertPasses("01".repeat(12), grey(204), WHITE);
        assertIsHeldFrom(8, "01".repeat(12), grey(203), WHITE);
    }

    /** Relative luminance of blue is 0.0722, less than a tenth, of red 0.2126, of green 0.7152. */
    @Test
    void luminanceIsWeighted() {
        assertPasses("01".repeat(12), BLACK, new int[] {0, 0, 255});
        assertIsHeldFrom(8, "01".repeat(12), BLACK, new int[] {0, 255, 0});
        assertPasses("01".repeat(12), BLACK, new int[] {0, 35, 0});
        assertIsHeldFrom(8, "01".repeat(12), BLACK, new int[] {0, 36, 0});
    }

    /** (R − G − B) × 320 must change by more than 20: 16 of 255 do, 15 do not. Their luminance is far below a tenth. */
    @Test
    void redCountsBeyondTwenty() {
        assertPasses("01".repeat(12), new int[] {60, 0, 0}, new int[] {75, 0, 0});
        assertIsHeldFrom(8, "01".repeat(12), new int[] {60, 0, 0}, new int[] {76, 0, 0});
    }

    /** R ÷ (R + G + B) has to be 0.8 or more in one of the two: 80 of 100. */
    @Test
    void redCountsIfSaturated() {
        assertIsHeldFrom(7, "01".repeat(12), new int[] {80, 0, 20}, new int[] {40, 0, 20});
        assertPasses("01".repeat(12), new int[] {79, 0, 20}, new int[] {40, 0, 20});
    }

    /**
     * More than 0.2 apart in u′v′ (WCAG 2.2): saturated red and orange of 40 to 25, while 40 to 14 is nearer. Luminance changes by less
     * than a tenth, (R − G − B) × 320 by less than 20.
     */
    @Test
    void redAgainstAnotherHueCounts() {
        int[] red = {30, 0, 0};
        assertIsHeldFrom(7, "01".repeat(12), red, new int[] {40, 25, 0});
        assertPasses("01".repeat(12), red, new int[] {40, 14, 0});
    }

    /** Neither green against blue nor white against grey is a red flash. */
    @Test
    void otherHuesAreNoRedFlash() {
        assertPasses("01".repeat(12), new int[] {0, 20, 0}, new int[] {0, 0, 200});
    }

    /** A slow rise counts once, however many frames it takes, and a fall within it of less than a tenth does not count. */
    @Test
    void onlyPeaksAndValleysCount() {
        FlashGuard guard = guard(fitted);
        for (int i = 0; i < 10 * RATE; i++) {
            int level = (i / 12) % 2 == 0 ? i % 240 : Math.max(0, i % 240 - 20);
            Frame frame = filled(grey(level));
            hold(guard, fitted, frame, i);
            assertArrayEquals(filled(grey(level)).strip(), frame.strip(), "frame " + i);
        }
    }

    /** One pixel of a long strip, and halves that flash in turn, are seen as well. */
    @Test
    void aMeanHidesNothing() {
        byte[] onePixel = new byte[30];
        Arrays.fill(onePixel, 15, 18, (byte) 255);
        assertEquals(8, firstHeld(fitted, "01".repeat(12), letter -> letter == '1' ? onePixel : new byte[30]));
        Fitted longer = Fitted.strip(32, Map.of());
        FlashGuard guard = guard(longer);
        boolean held = false;
        for (int i = 0; i < RATE; i++) {
            boolean first = i / FRAMES_A_LETTER % 2 == 0;
            Frame frame = longer.frame();
            Arrays.fill(frame.strip(), first ? 0 : 48, first ? 48 : 96, (byte) 255);
            hold(guard, longer, frame, i);
            held |= guard.heldFrames() > 0;
        }
        assertTrue(held);
    }

    /** A zone that flashes is held by itself; its neighbours stay as wanted. */
    @Test
    void onlyWhatFlashesIsHeld() {
        Fitted longer = Fitted.strip(64, Map.of("glow", Zone.run(0, 7), "job", Zone.run(8, 63)));
        FlashGuard guard = guard(longer);
        for (int i = 0; i < 3 * RATE; i++) {
            Frame frame = longer.frame();
            Arrays.fill(frame.strip(), 0, 24, (byte) (i / FRAMES_A_LETTER % 2 * 255));
            Arrays.fill(frame.strip(), 24, 192, (byte) (i / 4));
            hold(guard, longer, frame, i);
            assertEquals(i / 4, frame.strip()[24], "frame " + i);
            assertEquals(i / 4, frame.strip()[191], "frame " + i);
        }
        assertAbove(RATE, guard.heldFrames());
    }

    /** After the flashing has ended the light goes back to what is wanted, in one direction, within three seconds. */
    @Test
    void comesBackWithoutAFlash() {
        FlashGuard guard = guard(fitted);
        EverySecond counter = new EverySecond(fitted.setup(), fitted.fitting(), List.of(5.0));
        int before = 255;
        for (int i = 0; i < 6 * RATE; i++) {
            boolean flashing = i < 2 * RATE;
            Frame frame = filled(grey(flashing ? 255 * (i / 6 % 2) : 30));
            hold(guard, fitted, frame, i);
            counter.see(frame, nanos(i));
            int level = frame.strip()[0] & 0xFF;
            if (!flashing) {
                assertTrue(level <= before, "frame " + i);
                before = level;
            }
            assertTrue(i < 5 * RATE || level == 30, "frame " + i + " is " + level);
        }
        assertEquals(3, counter.most());
    }

    /** A white light on a dimmer is judged like a pixel, and a plain colour strip by its colours. */
    @Test
    void dimmersAreJudgedToo() {
        Setup setup = new Setup(
                1,
                "RGB",
                List.of(0, 0, 0),
                0,
                0,
                3000,
                WhenSilent.DARK,
                List.of(1000),
                Collections.nCopies(4, new Setup.Dimmer(0, 100, 0)));
        Fitting fitting = new Fitting(
                1,
                Map.of(),
                List.of(
                        Fitting.DimmerUse.white("work"),
                        new Fitting.DimmerUse("cove", 1, 2),
                        new Fitting.DimmerUse("cove", 1, 0),
                        new Fitting.DimmerUse("cove", 1, 1)));
        FlashGuard guard = new FlashGuard(setup, fitting, List.of(), RATE);
        CurrentGuard ceiling = new CurrentGuard(setup, Ranks.alike(1, 4), RATE, 2);
        for (int i = 0; i < 2 * RATE; i++) {
            Frame frame = new Frame(3, 4);
            int wanted = i / FRAMES_A_LETTER % 2 * 65_535;
            frame.duties()[0] = wanted;
            frame.duties()[1] = i * 7;
            guard.hold(frame, nanos(i), ceiling);
            assertEquals(i < 80 ? wanted : 65_535, frame.duties()[0], "frame " + i);
            assertEquals(i * 7, frame.duties()[1]);
        }
    }

    @Test
    void refusesARateThatIsOutOfRange() {
        assertThrows(
                IllegalArgumentException.class, () -> new FlashGuard(fitted.setup(), fitted.fitting(), List.of(), 0));
        assertDoesNotThrow(() -> new FlashGuard(fitted.setup(), fitted.fitting(), List.of(), 1));
        assertThrows(IllegalArgumentException.class, () -> Area.ofEqual(new int[0], 1));
        assertThrows(IllegalArgumentException.class, () -> new Swings(0));
    }

    /** The bytes of the strip for a letter. */
    private interface Drawing {
        byte[] of(char letter);
    }

    private void assertPasses(String letters, int[] zero, int[] one) {
        assertEquals(
                -1,
                firstHeld(
                        fitted,
                        letters,
                        letter -> filled(letter == '1' ? one : zero).strip()));
    }

    private void assertIsHeldFrom(int letter, String letters, int[] zero, int[] one) {
        assertEquals(
                letter,
                firstHeld(
                        fitted,
                        letters,
                        each -> filled(each == '1' ? one : zero).strip()));
    }

    /** Index of the first letter that is not shown as wanted; −1 if all are. */
    private static int firstHeld(Fitted fitted, String letters, Drawing drawing) {
        FlashGuard guard = guard(fitted);
        for (int i = 0; i < letters.length() * FRAMES_A_LETTER; i++) {
            byte[] wanted = drawing.of(letters.charAt(i / FRAMES_A_LETTER));
            Frame frame = fitted.frame();
            System.arraycopy(wanted, 0, frame.strip(), 0, wanted.length);
            hold(guard, fitted, frame, i);
            if (!Arrays.equals(wanted, frame.strip())) {
                return i / FRAMES_A_LETTER;
            }
        }
        return -1;
    }

    private static void hold(FlashGuard guard, Fitted fitted, Frame frame, long tick) {
        Ranks ranks = Ranks.alike(fitted.setup().pixels(), 0);
        guard.hold(frame, nanos(tick), new CurrentGuard(fitted.setup(), ranks, RATE, 2));
    }

    private static long nanos(long tick) {
        return TimeUnit.SECONDS.toNanos(tick) / RATE;
    }

    private static FlashGuard guard(Fitted fitted) {
        return new FlashGuard(fitted.setup(), fitted.fitting(), List.of(), RATE);
    }

    private Frame filled(int... colour) {
        Frame frame = fitted.frame();
        for (int i = 0; i < frame.strip().length; i++) {
            frame.strip()[i] = (byte) colour[i % 3];
        }
        return frame;
    }

    private static int[] grey(int level) {
        return new int[] {level, level, level};
    }
}
