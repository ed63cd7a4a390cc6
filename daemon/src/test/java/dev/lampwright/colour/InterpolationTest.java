package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: CSS Color Module Level 4, "Color Interpolation"; where an example is taken from there, it says so. */
class InterpolationTest {
    /** The examples of "shorter", "longer" and "increasing", at the middle; "decreasing" by its rule. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "oklch shorter | oklch(0.6 0.24 30) | oklch(0.8 0.15 90) | oklch(0.7 0.195 60)",
                "oklch longer | oklch(0.6 0.24 30) | oklch(0.8 0.15 90) | oklch(0.7 0.195 240)",
                "oklch increasing | oklch(0.5 0.1 30) | oklch(0.7 0.1 190) | oklch(0.6 0.1 110)",
                "oklch increasing | oklch(0.5 0.1 30) | oklch(0.7 0.1 230) | oklch(0.6 0.1 130)",
                "oklch decreasing | oklch(0.5 0.1 30) | oklch(0.7 0.1 190) | oklch(0.6 0.1 290)",
                "oklch shorter | oklch(0.5 0.1 350) | oklch(0.5 0.1 20) | oklch(0.5 0.1 5)",
                "oklch longer | oklch(0.5 0.1 40) | oklch(0.5 0.1 40) | oklch(0.5 0.1 220)",
                "oklab | oklab(0.2 0.1 -0.1) | oklab(0.6 -0.1 0.1) | oklab(0.4 0 0)",
            })
    void middle(String way, String from, String to, String middle) {
        assertMiddle(Interpolation.parse(way), from, to, middle);
    }

    /** The rules' ranges: shorter [-180, 180]; longer (-360, -180], [180, 360]; increasing [0, 360); decreasing (-360, 0]. */
    @Test
    void turnsAreWithinTheirRange() {
        for (int from = -400; from <= 800; from += 15) {
            for (int to = -400; to <= 800; to += 15) {
                assertTurn(Interpolation.OKLCH_SHORTER.turn(from, to), from, to, 0, 180, 0, 180);
                assertTurn(Interpolation.OKLCH_LONGER.turn(from, to), from, to, 180, 359, 180, 360);
                assertTurn(Interpolation.OKLCH_INCREASING.turn(from, to), from, to, 0, 0, 0, 359);
                assertTurn(Interpolation.OKLCH_DECREASING.turn(from, to), from, to, 0, 359, 0, 0);
            }
        }
    }

    private static void assertTurn(
            double turn, int from, int to, int leastDown, int mostDown, int leastUp, int mostUp) {
        String name = from + " to " + to + " turns " + turn;
        assertEquals(0, Math.floorMod(Math.round(turn) - (to - from), 360), name);
        double size = Math.abs(turn);
        assertEquals(true, turn < 0 ? size >= leastDown && size <= mostDown : size >= leastUp && size <= mostUp, name);
    }

    /** "Interpolating with Missing Components", the example of a missing hue. */
    @Test
    void missingHueIsTheOthers() {
        assertMiddle(
                Interpolation.OKLCH_SHORTER,
                "oklch(78.3% 0.108 326.5)",
                "oklch(39.2% 0.4 none)",
                "oklch(58.75% 0.254 326.5)");
    }

    /** The example of a missing alpha: premultiplied with 0.5 both, which cancels out. */
    @Test
    void missingAlphaIsTheOthers() {
        Mix mix = mix(Interpolation.OKLCH_SHORTER, "oklch(0.783 0.108 326.5 / 0.5)", "oklch(0.392 0.4 0 / none)");
        assertEquals(0.5, mix.alpha(0.3));
        assertNear("oklch(0.5875 0.254 343.25)", mix.colour(0.5));
    }

    /** Analogous components: the hue of CIE LCH is carried over to OKLCH, the blue of display-p3 is not. */
    @Test
    void onlyWhatIsAnalogousIsCarried() {
        assertEquals(true, Double.isNaN(CssColour.colour("lch(50% 0.02 none)").forMixing(true)[2]));
        assertEquals(78.748, CssColour.colour("color(display-p3 0.7 0.5 none)").forMixing(true)[2], 0.01);
    }

    /** Analogous sets: lab(50% none none) lacks chroma and hue, rgb(none none none) everything. */
    @Test
    void wholeSetsAreCarried() {
        double[] lab = CssColour.colour("lab(50% none none)").forMixing(true);
        assertEquals(true, Double.isNaN(lab[1]) && Double.isNaN(lab[2]) && lab[0] > 0.5);
        double[] rgb = CssColour.colour("rgb(none none none / 50%)").forMixing(false);
        assertEquals(true, Double.isNaN(rgb[0]) && Double.isNaN(rgb[1]) && Double.isNaN(rgb[2]));
        assertEquals(0.5, rgb[3]);
    }

    /** A grey has no hue: on the way to a colour, only the chroma grows. */
    @Test
    void greyTakesTheHueOfTheOther() {
        Mix mix = mix(Interpolation.OKLCH_LONGER, "white", "oklch(0.6 0.2 40)");
        Mix plain = mix(Interpolation.OKLCH_LONGER, "oklch(1 0 none)", "oklch(0.6 0.2 40)");
        assertEquals(0, mix.colour(0.25).difference(plain.colour(0.25)), 1e-7);
    }

    /** "Interpolating with Alpha": the same arithmetic as its examples, in OKLab. */
    @Test
    void alphaIsPremultiplied() {
        Mix mix = mix(Interpolation.OKLAB, "oklab(0.4 0.1 0 / 0.4)", "oklab(0.8 0 0.1 / 0.6)");
        assertEquals(0.5, mix.alpha(0.5), 1e-12);
        assertNear("oklab(0.64 0.04 0.06)", mix.colour(0.5));
    }

    /** Fading to nothing keeps the colour. */
    @Test
    void transparentHasNoColour() {
        assertNear("red", mix(Interpolation.OKLAB, "red", "transparent").colour(0.9));
    }

    @Test
    void waysAreReadAsCssWritesThem() {
        assertEquals(Interpolation.OKLAB, Interpolation.parse("oklab"));
        assertEquals(Interpolation.OKLCH_SHORTER, Interpolation.parse("oklch"));
        assertEquals(Interpolation.OKLCH_LONGER, Interpolation.parse(" in  OKLCH longer hue "));
        String message = assertThrows(IllegalArgumentException.class, () -> Interpolation.parse("hsl"))
                .getMessage();
        assertEquals(
                "\"hsl\" is not a way between colours; write one of \"oklab\", \"oklch shorter\", \"oklch longer\","
                        + " \"oklch increasing\", \"oklch decreasing\"",
                message);
    }

    private static Mix mix(Interpolation way, String from, String to) {
        return new Mix(CssColour.colour(from), CssColour.colour(to), way);
    }

    private static void assertMiddle(Interpolation way, String from, String to, String middle) {
        assertNear(middle, mix(way, from, to).colour(0.5));
    }

    private static void assertNear(String wanted, Oklab actual) {
        assertEquals(0, Oklab.of(CssColour.colour(wanted).rgb()).difference(actual), 1e-6, actual + " for " + wanted);
    }
}
