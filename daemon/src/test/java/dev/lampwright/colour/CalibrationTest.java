package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/**
 * The light that the LEDs give is calculated forwards here, from the emitters alone (Grassmann's laws), and compared with the intended
 * light.
 */
class CalibrationTest {
    /** Typical LEDs: covering all of sRGB, of uneven strength. Invented. */
    private static final Emitter RED = new Emitter(new Chromaticity(0.691, 0.308), 390);

    private static final Emitter GREEN = new Emitter(new Chromaticity(0.172, 0.735), 720);
    private static final Emitter BLUE = new Emitter(new Chromaticity(0.137, 0.045), 160);
    private static final Emitter WHITE = new Emitter(BlackBody.chromaticity(3000), 2100);
    private static final Calibration MEASURED = Calibration.measured(RED, GREEN, BLUE, Chromaticity.D65);

    private final SplittableRandom random = new SplittableRandom(7);
    private final float[] duties = new float[4];

    @Test
    void measuredStripShowsWhatIsMeant() {
        PixelDuties drive = new PixelDuties(MEASURED, false);
        drive.pixel(new float[] {1, 1, 1, 1}, 0, duties);
        double full = light().second();
        for (int i = 0; i < 1000; i++) {
            float[] rgba = {random.nextFloat(), random.nextFloat(), random.nextFloat(), 1};
            drive.pixel(rgba, 0, duties);
            Triple meant = Rgb.TO_XYZ.times(new Triple(rgba[0], rgba[1], rgba[2]));
            Triple shown = light();
            assertTrue(duties[0] >= 0 && duties[1] >= 0 && duties[2] >= 0, "within what the strip can");
            if (duties[0] < 1 - 1e-6 && duties[1] < 1 - 1e-6 && duties[2] < 1 - 1e-6) {
                assertEquals(meant.first(), shown.first() / full, 2e-4);
                assertEquals(meant.second(), shown.second() / full, 1e-5);
                assertEquals(meant.third(), shown.third() / full, 2e-4);
            }
        }
    }

    @Test
    void whiteIsTheTarget() {
        for (Chromaticity target : new Chromaticity[] {Chromaticity.D65, BlackBody.chromaticity(2700)}) {
            PixelDuties drive = new PixelDuties(Calibration.measured(RED, GREEN, BLUE, target), false);
            drive.pixel(new float[] {0.5f, 0.5f, 0.5f, 1}, 0, duties);
            assertEquals(0.5, Math.max(duties[0], Math.max(duties[1], duties[2])), 1e-6, "as bright as it goes");
            Chromaticity shown = Chromaticity.of(light());
            assertEquals(target.x(), shown.x(), 1e-4);
            assertEquals(target.y(), shown.y(), 1e-4);
        }
    }

    /** Bradford's adaptation from D65 to D50 as CSS Color Module Level 4 has it, "Sample code for Color Conversions". */
    @Test
    void coloursAreAdaptedToTheTarget() {
        Matrix adaptation = new Matrix(
                1.0479297925449969,
                0.022946870601609652,
                -0.05019226628920524,
                0.02962780877005599,
                0.9904344267538799,
                -0.017073799063418826,
                -0.009243040646204504,
                0.015055191490298152,
                0.7518742814281371);
        PixelDuties drive =
                new PixelDuties(Calibration.measured(RED, GREEN, BLUE, new Chromaticity(0.3457, 0.3585)), false);
        drive.pixel(new float[] {1, 1, 1, 1}, 0, duties);
        double full = light().second();
        for (float[] rgba : new float[][] {{0.5f, 0.2f, 0.1f, 1}, {0.1f, 0.5f, 0.2f, 1}, {0.2f, 0.2f, 0.5f, 1}}) {
            Triple meant = adaptation.times(Rgb.TO_XYZ.times(new Triple(rgba[0], rgba[1], rgba[2])));
            drive.pixel(rgba, 0, duties);
            assertEquals(meant.first(), light().first() / full, 1e-5);
            assertEquals(meant.second(), light().second() / full, 1e-5);
            assertEquals(meant.third(), light().third() / full, 1e-5);
        }
    }

    /** If red is weak and green pale, full magenta needs more red than white does: it is darker than intended, but magenta. */
    @Test
    void whatIsTooStrongKeepsItsChromaticity() {
        Emitter weak = new Emitter(RED.colour(), 100);
        Emitter pale = new Emitter(new Chromaticity(0.32, 0.54), 720);
        PixelDuties drive = new PixelDuties(Calibration.measured(weak, pale, BLUE, Chromaticity.D65), false);
        drive.pixel(new float[] {0.2f, 0, 0.2f, 1}, 0, duties);
        assertTrue(duties[0] > 0.2001, "five times as much is too much: " + duties[0]);
        Chromaticity meant = Chromaticity.of(light(weak, pale, BLUE));
        drive.pixel(new float[] {1, 0, 1, 1}, 0, duties);
        Chromaticity shown = Chromaticity.of(light(weak, pale, BLUE));
        assertEquals(1, duties[0], 1e-6);
        assertEquals(meant.x(), shown.x(), 1e-5);
        assertEquals(meant.y(), shown.y(), 1e-5);
    }

    /** A strip with a weak red primary cannot show sRGB's red: the colour moves towards white, without getting brighter. */
    @Test
    void whatTheStripCannotShowKeepsItsLuminance() {
        Emitter pale = new Emitter(new Chromaticity(0.55, 0.35), 390);
        PixelDuties drive = new PixelDuties(Calibration.measured(pale, GREEN, BLUE, Chromaticity.D65), false);
        drive.pixel(new float[] {0.4f, 0.4f, 0.4f, 1}, 0, duties);
        double grey = light(pale, GREEN, BLUE).second() / 0.4;
        drive.pixel(new float[] {0.4f, 0, 0, 1}, 0, duties);
        assertEquals(0, Math.min(duties[0], Math.min(duties[1], duties[2])), 1e-6, "on the edge of what it can");
        Light red = new Light(0.4f, 0, 0);
        assertEquals(red.luminance(), light(pale, GREEN, BLUE).second() / grey, 1e-4);
    }

    @Test
    void whiteTakesOverAllItCanAndChangesNothing() {
        PixelDuties plain = new PixelDuties(MEASURED, false);
        PixelDuties withWhite = new PixelDuties(MEASURED.withWhite(WHITE), true);
        for (int i = 0; i < 1000; i++) {
            float[] rgba = {random.nextFloat(), random.nextFloat(), random.nextFloat(), 1};
            plain.pixel(rgba, 0, duties);
            Triple meant = light();
            withWhite.pixel(rgba, 0, duties);
            Triple shown = plus(light(), WHITE.xyz(), duties[3]);
            assertEquals(meant.first(), shown.first(), 2e-3);
            assertEquals(meant.second(), shown.second(), 2e-3);
            assertEquals(meant.third(), shown.third(), 2e-3);
            double least = Math.min(duties[0], Math.min(duties[1], duties[2]));
            assertTrue(least > -1e-6, "no duty below nothing");
            assertTrue(least < 1e-6 || duties[3] > 1 - 1e-6, "one colour is used up, or white is full");
        }
    }

    /** By default white LEDs are all three together, and grey is shown by them alone. */
    @Test
    void unknownWhiteIsAllThree() {
        PixelDuties drive = new PixelDuties(Calibration.none(), true);
        drive.pixel(new float[] {0.75f, 0.5f, 0.25f, 1}, 0, duties);
        assertDuties(0.5, 0.25, 0, 0.25);
    }

    /** A white LED of 3000 K shows the colour of a black body of 3000 K alone. */
    @Test
    void whiteOfAColourTemperature() {
        Light warm = BlackBody.light(3000);
        PixelDuties drive = new PixelDuties(Calibration.none().withWhite(BlackBody.chromaticity(3000)), true);
        drive.pixel(new float[] {warm.red(), warm.green(), warm.blue(), 1}, 0, duties);
        assertDuties(0, 0, 0, 1);
        drive.pixel(new float[] {1, 1, 1, 1}, 0, duties);
        assertDuties(0, 1 - warm.green(), 1 - warm.blue(), 1);
    }

    @Test
    void gains() {
        PixelDuties drive = new PixelDuties(Calibration.gains(1, 0.5, 0.25), false);
        drive.pixel(new float[] {0.5f, 0.5f, 0.5f, 1}, 0, duties);
        assertDuties(0.5, 0.25, 0.125, 0);
    }

    @Test
    void whatCannotBeIsRefused() {
        assertRefused("above 0 and at most 1", () -> Calibration.gains(1, 0, 1));
        assertRefused("above 0 and at most 1", () -> Calibration.gains(1, 1.2, 1));
        assertRefused("above 0 and at most 1", () -> Calibration.gains(1, Double.NaN, 1));
        assertRefused("on one line", () -> Calibration.measured(RED, RED, BLUE, Chromaticity.D65));
        assertRefused("between them", () -> Calibration.measured(RED, GREEN, BLUE, new Chromaticity(0.7, 0.2)));
        assertRefused("white LED", () -> MEASURED.withWhite(new Chromaticity(0.05, 0.5)));
        assertRefused("of no light", () -> new Chromaticity(0.6, 0.6));
        assertRefused("luminance is above 0", () -> new Emitter(Chromaticity.D65, 0));
    }

    private static void assertRefused(String why, Executable what) {
        String message = assertThrows(IllegalArgumentException.class, what).getMessage();
        assertTrue(message.contains(why), message);
    }

    private void assertDuties(double red, double green, double blue, double white) {
        assertEquals(red, duties[0], 1e-6);
        assertEquals(green, duties[1], 1e-6);
        assertEquals(blue, duties[2], 1e-6);
        assertEquals(white, duties[3], 1e-6);
    }

    private Triple light() {
        return light(RED, GREEN, BLUE);
    }

    private Triple light(Emitter red, Emitter green, Emitter blue) {
        Triple none = new Triple(0, 0, 0);
        return plus(plus(plus(none, red.xyz(), duties[0]), green.xyz(), duties[1]), blue.xyz(), duties[2]);
    }

    private static Triple plus(Triple sum, Triple light, double duty) {
        return new Triple(
                sum.first() + light.first() * duty,
                sum.second() + light.second() * duty,
                sum.third() + light.third() * duty);
    }
}
