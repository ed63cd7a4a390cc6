package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Source: CSS Color Module Level 4, "Gamut Mapping". */
class GamutMapTest {
    private static final double JUST_NOTICEABLE = 0.02;
    private static final double CLOSE_ENOUGH = 0.0001;

    private final SplittableRandom random = new SplittableRandom(1);

    @Test
    void whatCanBeShownStays() {
        for (int i = 0; i < 2000; i++) {
            Rgb rgb = new Rgb(random.nextDouble(), random.nextDouble(), random.nextDouble());
            Light light = Oklab.of(rgb).light();
            assertEquals(rgb.red(), light.red(), 1e-7);
            assertEquals(rgb.green(), light.green(), 1e-7);
            assertEquals(rgb.blue(), light.blue(), 1e-7);
        }
    }

    /** Lightness at or over 100 % is white and at or under 0 % black, whatever the rest says. */
    @Test
    void extremeLightnessIsWhiteOrBlack() {
        assertEquals(Light.WHITE, new Oklab(1.0, 0.3, 0.1).light());
        assertEquals(Light.BLACK, new Oklab(0.0, 0.3, 0.1).light());
    }

    /**
     * By the algorithm the result is, within its last step, no further than can just be seen from a colour of the same lightness and
     * hue with no more chroma, so lightness and hue can be off by no more than that.
     */
    @Test
    void lightnessAndHueAreKeptWithinWhatCanBeSeen() {
        for (int i = 0; i < 2000; i++) {
            Oklch wide = new Oklch(random.nextDouble(0.05, 0.95), random.nextDouble(0.1, 0.4), random.nextDouble(360));
            Oklab mapped = Oklab.of(wide.oklab().light());
            double along = Oklch.of(mapped).chroma();
            double away = mapped.difference(
                    wide.withChroma(Math.min(along, wide.chroma())).oklab());
            assertTrue(away <= JUST_NOTICEABLE + 2 * CLOSE_ENOUGH, wide + " is mapped " + away + " away");
            assertTrue(along <= wide.chroma() + JUST_NOTICEABLE, wide + " gains chroma");
        }
    }

    /** The yellow of Display P3 at the limit of sRGB, an example of the section: lightness hardly changes. */
    @Test
    void wideYellowStaysLight() {
        Oklab wide = Oklab.of(CssColour.colour("color(display-p3 1 1 0)").rgb());
        Oklab mapped = Oklab.of(CssColour.parse("color(display-p3 1 1 0)"));
        assertEquals(wide.lightness(), mapped.lightness(), JUST_NOTICEABLE);
        assertTrue(mapped.b() > 0.15, "it is still yellow");
    }
}
