package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Source: Machado, Oliveira and Fernandes 2009; the numbers of the matrices are held to a library's by {@link VectorsTest}. */
class ColourVisionTest {
    /** The model leaves what has no colour as it is. */
    @ParameterizedTest
    @EnumSource
    void greyStays(ColourVision vision) {
        Light grey = vision.seen(new Light(0.4f, 0.4f, 0.4f));
        assertEquals(0.4f, grey.red(), 1e-6f);
        assertEquals(0.4f, grey.green(), 1e-6f);
        assertEquals(0.4f, grey.blue(), 1e-6f);
    }

    /** What the three are named for: which pairs of colours come closer. Common knowledge of the conditions. */
    @Test
    void redAndGreenOrYellowAndPinkComeCloser() {
        assertCloser(ColourVision.PROTAN, "seagreen", "indianred");
        assertCloser(ColourVision.DEUTAN, "seagreen", "indianred");
        assertCloser(ColourVision.TRITAN, "gold", "lightpink");
    }

    private static void assertCloser(ColourVision vision, String one, String other) {
        Light first = CssColour.parse(one);
        Light second = CssColour.parse(other);
        double plain = Oklab.of(first).difference(Oklab.of(second));
        double seen = Oklab.of(vision.seen(first)).difference(Oklab.of(vision.seen(second)));
        assertTrue(seen < plain / 2, vision + " sees " + seen + " of " + plain);
    }
}
