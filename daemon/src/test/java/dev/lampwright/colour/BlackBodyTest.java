package dev.lampwright.colour;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BlackBodyTest {
    /**
     * CIE 15: illuminant A is Planck's law with 2848 K and a second constant of 1.435e-2 m·K, x = 0.44757, y = 0.40745. With today's
     * constant that is 2855.5 K.
     */
    @Test
    void illuminantA() {
        Chromaticity a = BlackBody.chromaticity(2848 * 1.438776877e-2 / 1.435e-2);
        assertEquals(0.44757, a.x(), 2e-5);
        assertEquals(0.40745, a.y(), 2e-5);
    }

    /** CIE 15: a spectrum of equal energy has x = y = 1/3 with the 1931 observer; the table there sums to 0.33331, 0.33329. */
    @Test
    void equalEnergy() {
        Chromaticity e = Chromaticity.of(Observer.xyz(metres -> 1));
        assertEquals(1 / 3.0, e.x(), 5e-5);
        assertEquals(1 / 3.0, e.y(), 5e-5);
    }

    /** The observer's y is 1 at 555 nm, its highest. Source: CIE 15. */
    @Test
    void observerPeaksAt555() {
        double peak = at(555);
        for (int nm = 360; nm <= 830; nm += 5) {
            assertTrue(at(nm) <= peak, nm + " nm");
        }
        assertEquals(5e-9, peak, 1e-20);
    }

    private static double at(int nm) {
        return Observer.xyz(metres -> Math.round(metres * 1e9) == nm ? 1 : 0).second();
    }

    /**
     * The Planckian locus as widely published to four digits (Wyszecki and Stiles, Color Science; values checked against a public
     * transcription), calculated there with a second constant of 1.4388e-2 m·K and an observer of four digits.
     */
    @ParameterizedTest
    @CsvSource({
        "1000, 0.6528, 0.3444", "1500, 0.5857, 0.3931", "2000, 0.5267, 0.4133", "2500, 0.4770, 0.4137",
        "3000, 0.4369, 0.4041", "3500, 0.4053, 0.3907", "4000, 0.3805, 0.3768", "4500, 0.3608, 0.3636",
        "5000, 0.3451, 0.3516", "5500, 0.3325, 0.3411", "6000, 0.3221, 0.3318", "6500, 0.3135, 0.3237",
        "7000, 0.3064, 0.3166", "7500, 0.3004, 0.3103", "8000, 0.2952, 0.3048", "8500, 0.2908, 0.3000",
    })
    void publishedLocus(double kelvin, double x, double y) {
        Chromaticity found = BlackBody.chromaticity(kelvin);
        assertEquals(x, found.x(), 1.1e-4);
        assertEquals(y, found.y(), 1.1e-4);
    }

    /**
     * A second opinion: the cubic splines of B. Kim et al., "Design of advanced color temperature control system for HDTV
     * applications", Journal of the Korean Physical Society 41(6), 2002, valid from 1667 K to 25000 K; coefficients from memory. They
     * are an approximation themselves.
     */
    @Test
    void cubicSplinesAgree() {
        for (double kelvin = 1700; kelvin <= 25_000; kelvin += 100) {
            Chromaticity found = BlackBody.chromaticity(kelvin);
            double x = splineX(kelvin);
            assertEquals(x, found.x(), 0.0015, kelvin + " K");
            assertEquals(splineY(kelvin, x), found.y(), 0.0015, kelvin + " K");
        }
    }

    private static double splineX(double kelvin) {
        double t = 1e3 / kelvin;
        return kelvin <= 4000
                ? ((-0.2661239 * t - 0.2343589) * t + 0.8776956) * t + 0.179910
                : ((-3.0258469 * t + 2.1070379) * t + 0.2226347) * t + 0.240390;
    }

    private static double splineY(double kelvin, double x) {
        if (kelvin <= 2222) {
            return ((-1.1063814 * x - 1.34811020) * x + 2.18555832) * x - 0.20219683;
        }
        return kelvin <= 4000
                ? ((-0.9549476 * x - 1.37418593) * x + 2.09137015) * x - 0.16748867
                : ((3.0817580 * x - 5.87338670) * x + 3.75112997) * x - 0.37001483;
    }

    /**
     * Before 1979 the candela was defined so that a black body at the freezing point of platinum has 60 cd/cm²; that is 2041.4 K today
     * (ITS-90, from memory). One kelvin more makes it 1.7 % brighter, so the old temperature scale leaves some uncertainty.
     */
    @Test
    void theOldCandela() {
        assertEquals(600_000, BlackBody.luminance(2041.4), 0.02 * 600_000);
    }

    @Test
    void hotterIsBrighterAndBluer() {
        for (double kelvin = 500; kelvin < 20_000; kelvin *= 1.05) {
            assertAbove(BlackBody.luminance(kelvin), BlackBody.luminance(kelvin * 1.05));
            assertTrue(BlackBody.chromaticity(kelvin * 1.05).x()
                    < BlackBody.chromaticity(kelvin).x());
        }
    }

    /** When shown, it has the chromaticity of the locus where sRGB reaches it, and is indistinguishable from it where it glows visibly. */
    @Test
    void shownAsItIs() {
        for (double kelvin = 600; kelvin < 40_000; kelvin *= 1.1) {
            Light light = BlackBody.light(kelvin);
            assertEquals(1, Math.max(light.red(), light.blue()), 1e-6, kelvin + " K");
            Chromaticity shown = Chromaticity.of(Rgb.TO_XYZ.times(Rgb.of(light).numbers()));
            Chromaticity locus = BlackBody.chromaticity(kelvin);
            if (kelvin > 1901) {
                assertEquals(locus.x(), shown.x(), 1e-6, kelvin + " K");
                assertEquals(locus.y(), shown.y(), 1e-6, kelvin + " K");
            } else if (kelvin > 900) {
                Triple xyz = locus.xyz(light.luminance());
                assertTrue(Oklab.of(Rgb.ofXyz(xyz)).difference(Oklab.of(light)) < 0.025, kelvin + " K");
            }
        }
    }

    @Test
    void temperaturesWithoutAGlowAreRefused() {
        for (double kelvin : new double[] {499, 100_001, Double.NaN, -1}) {
            String message = assertThrows(IllegalArgumentException.class, () -> BlackBody.light(kelvin))
                    .getMessage();
            assertTrue(message.contains("500.0 K to 100000.0 K"), message);
        }
    }
}
