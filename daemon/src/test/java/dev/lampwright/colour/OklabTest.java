package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OklabTest {
    /** B. Ottosson, "A perceptual color space for image processing", 2020, table of example XYZ and OKLab pairs, to three digits. */
    @ParameterizedTest
    @CsvSource({
        "0.950, 1.000, 1.089, 1.000, 0.000, 0.000",
        "1, 0, 0, 0.450, 1.236, -0.019",
        "0, 1, 0, 0.922, -0.671, 0.263",
        "0, 0, 1, 0.153, -1.415, -0.449",
    })
    void publishedTable(double x, double y, double z, double lightness, double a, double b) {
        Oklab lab = Oklab.of(Rgb.ofXyz(new Triple(x, y, z)));
        assertEquals(lightness, lab.lightness(), 0.0006);
        assertEquals(a, lab.a(), 0.0006);
        assertEquals(b, lab.b(), 0.0006);
    }

    /** Grey has no colour: that is what the matrices of CSS were recalculated for. */
    @Test
    void greyIsNeutral() {
        for (int i = 0; i <= 100; i++) {
            float level = i / 100f;
            Oklab lab = Oklab.of(new Light(level, level, level));
            assertEquals(Math.cbrt(level), lab.lightness(), 1e-12);
            assertEquals(0, Math.hypot(lab.a(), lab.b()), 1e-12);
        }
    }

    @Test
    void thereAndBack() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 1000; i++) {
            Rgb rgb = new Rgb(random.nextDouble(-0.2, 1.2), random.nextDouble(), random.nextDouble());
            Rgb back = Oklab.of(rgb).rgb();
            assertEquals(rgb.red(), back.red(), 1e-12);
            assertEquals(rgb.green(), back.green(), 1e-12);
            assertEquals(rgb.blue(), back.blue(), 1e-12);
        }
    }

    @Test
    void differenceFromBlackToWhiteIsOne() {
        assertEquals(1, Oklab.of(Light.BLACK).difference(Oklab.of(Light.WHITE)), 1e-12);
    }
}
