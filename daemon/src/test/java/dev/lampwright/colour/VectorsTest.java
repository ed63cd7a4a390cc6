package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Compares with general colour libraries. */
class VectorsTest {
    /** The vectors have nine significant digits, the numbers here are up to about 10. */
    private static final double DIGITS = 2e-8;

    /** Light is kept in floats of 24 bits. */
    private static final double FLOAT = 1e-7;

    @Test
    void everyWritingIsReadAndConverted() {
        check("colour", 1300, line -> {
            Colour colour = CssColour.colour(line[0]);
            assertNear(Vectors.numbers(line[1]), colour.rgb().numbers(), DIGITS, line[0]);
            assertEquals(Double.parseDouble(line[3]), colour.alpha(), DIGITS, line[0]);
        });
    }

    /** Both follow the same steps of CSS; a step could differ only if a colour lies within rounding of a limit. */
    @Test
    void coloursThatCannotBeShownAreMapped() {
        check("colour", 1300, line -> {
            Triple light = Rgb.of(CssColour.colour(line[0]).light()).numbers();
            assertNear(Vectors.numbers(line[2]), light, DIGITS + FLOAT, line[0]);
        });
    }

    @Test
    void mixturesByEveryRule() {
        check("mix", 800, line -> {
            Mix mix = new Mix(CssColour.colour(line[1]), CssColour.colour(line[2]), Interpolation.parse(line[0]));
            double share = Double.parseDouble(line[3]);
            String name = String.join(" ", line[0], line[1], line[2], line[3]);
            assertNear(Vectors.numbers(line[4]), mix.colour(share).rgb().numbers(), DIGITS, name);
            assertEquals(Double.parseDouble(line[5]), mix.alpha(share), DIGITS, name);
        });
    }

    @Test
    void differences() {
        check("difference", 200, line -> {
            double difference = Oklab.of(CssColour.parse(line[0])).difference(Oklab.of(CssColour.parse(line[1])));
            assertEquals(Double.parseDouble(line[2]), difference, 1e-6, line[0] + " " + line[1]);
        });
    }

    @Test
    void colourVision() {
        check("vision", 180, line -> {
            double[] light = Vectors.numbers(line[1]);
            Light seen =
                    ColourVision.valueOf(line[0]).seen(new Light((float) light[0], (float) light[1], (float) light[2]));
            double[] unbounded = Vectors.numbers(line[2]);
            double[] cut = {cut(unbounded[0]), cut(unbounded[1]), cut(unbounded[2])};
            assertNear(cut, Rgb.of(seen).numbers(), 3 * FLOAT, line[0] + " " + line[1]);
        });
    }

    private static void check(String kind, int atLeast, Consumer<String[]> judge) {
        List<String[]> lines = Vectors.of(kind);
        assertTrue(lines.size() >= atLeast, lines.size() + " of " + kind);
        assertAll(lines.stream().map(line -> () -> judge.accept(line)));
    }

    private static void assertNear(double[] wanted, Triple actual, double tolerance, String name) {
        double size = Math.max(1, Math.max(Math.abs(wanted[0]), Math.max(Math.abs(wanted[1]), Math.abs(wanted[2]))));
        assertEquals(wanted[0], actual.first(), tolerance * size, name);
        assertEquals(wanted[1], actual.second(), tolerance * size, name);
        assertEquals(wanted[2], actual.third(), tolerance * size, name);
    }

    private static double cut(double value) {
        return Math.max(0, Math.min(1, value));
    }
}
