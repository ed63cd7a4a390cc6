package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CssColourTest {
    /** CSS Color Module Level 4: writings that its text or its examples call the same colour. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "#0f0 | lime",
                "#00ff00 | rgb(0 255 0)",
                "#0000ffcc | rgb(0 0 255 / 0.8)",
                "#123C | #112233cc",
                "RGB(0% 100% 0%) | lime",
                "rgb(255, 0, 0) | red",
                "rgba(100%, 0%, 0%, 50%) | rgb(255 0 0 / .5)",
                "rgb(300 -10 0) | red",
                "hsl(120deg 100% 50%) | lime",
                "hsl(120, 100%, 25%) | rgb(0% 50% 0%)",
                "hsl(120 100 25) | rgb(0% 50% 0%)",
                "hsl(0.3333333333333333turn 100% 50%) | lime",
                "hsl(-240 100% 50%) | lime",
                "hwb(90 10% 10%) | rgb(50% 90% 10%)",
                "hwb(0 60% 60%) | rgb(50% 50% 50%)",
                "hwb(45 40% 80%) | rgb(33.33333333333333% 33.33333333333333% 33.33333333333333%)",
                "oklch(40% 0.268735435 34.568626) | oklab(40% 0.221294 0.152479)",
                "lch(50% 0 none) | lab(50 0 0)",
                "lab(200 0 0) | lab(100% 0 0)",
                "oklch(50% -1 30) | oklch(50% 0 30)",
                "color(xyz 0.1 0.2 0.3) | color(xyz-d65 10% 20% 30%)",
                "color(srgb 1 0.5 0) | rgb(100% 50% 0%)",
                "transparent | #0000",
                "rgb(none 0 0 / none) | rgb(0 0 0 / 0)",
                "  Orange  | #ffa500",
                "rgb(+1e1 .5e2 5.0E-1) | rgb(10 50 0.5)",
                "rebeccapurple | #663399",
            })
    void theSameColour(String one, String other) {
        Colour first = CssColour.colour(one);
        Colour second = CssColour.colour(other);
        assertEquals(first.alpha(), second.alpha(), 1e-12);
        assertEquals(0, Oklab.of(first.rgb()).difference(Oklab.of(second.rgb())), 1e-5);
    }

    /**
     * CSS Color Module Level 4, the examples of lab, lch, oklab and oklch, beside each the colour in sRGB that the text gives. They
     * are rounded, one to whole percents of 0.4. The last one of lch is left out: its chroma of 45.553 % does not fit its twin in lab,
     * which has 44.553 %.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lab(29.2345% 39.3825 20.0664) | rgb(49.06% 13.87% 15.9%)",
                "lab(52.2345 40.1645 59.9971) | rgb(77.61% 36.34% 2.45%)",
                "lab(60.2345 -5.3654 58.956) | rgb(61.65% 57.51% 9.28%)",
                "lab(62.2345% -34.9638 47.7721) | rgb(40.73% 65.12% 22.35%)",
                "lab(67.5345 -8.6911 -41.6019) | rgb(38.29% 67.27% 93.85%)",
                "lab(29.69% 44.888% -29.04%) | rgb(50.2% 0% 50.2%)",
                "lch(29.2345% 44.2 27) | rgb(49.06% 13.87% 15.9%)",
                "lch(52.2345% 72.2 56.2) | rgb(77.61% 36.34% 2.45%)",
                "lch(60.2345 59.2 95.2) | rgb(61.65% 57.51% 9.28%)",
                "lch(62.2345% 59.2 126.2) | rgb(40.73% 65.12% 22.35%)",
                "lch(67.5345% 42.5 258.2) | rgb(38.29% 67.27% 93.85%)",
                "oklab(40.101% 0.1147 0.0453) | rgb(49.06% 13.87% 15.9%)",
                "oklab(59.686% 0.1009 0.1192) | rgb(77.61% 36.34% 2.45%)",
                "oklab(0.65125 -0.0320 0.1274) | rgb(61.65% 57.51% 9.28%)",
                "oklab(66.016% -0.1084 0.1114) | rgb(40.73% 65.12% 22.35%)",
                "oklab(72.322% -0.0465 -0.1150) | rgb(38.29% 67.27% 93.85%)",
                "oklab(42.1% 41% -25%) | rgb(50.2% 0% 50.2%)",
                "oklch(40.101% 0.12332 21.555) | rgb(49.06% 13.87% 15.9%)",
                "oklch(59.686% 0.15619 49.7694) | rgb(77.61% 36.34% 2.45%)",
                "oklch(0.65125 0.13138 104.097) | rgb(61.65% 57.51% 9.28%)",
                "oklch(0.66016 0.15546 134.231) | rgb(40.73% 65.12% 22.35%)",
                "oklch(72.322% 0.12403 247.996) | rgb(38.29% 67.27% 93.85%)",
                "oklch(42.1% 48.25% 328.4) | rgb(50.2% 0% 50.2%)",
                "oklch(0.6 0.24 30) | rgb(93.22% 7.98% 0.485%)",
                "oklch(0.5 0.1 30) | rgb(57.92% 29.44% 25.11%)",
            })
    void examplesOfTheText(String text, String srgb) {
        Oklab ours = Oklab.of(CssColour.colour(text).rgb());
        Oklab theirs = Oklab.of(CssColour.colour(srgb).rgb());
        assertEquals(0, ours.difference(theirs), 0.002);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ornage | no such name",
                "'' | nothing there",
                "#ff80 0 | \"0\" is too much",
                "#ff800 | 3, 4, 6 or 8",
                "#gg8000 | 3, 4, 6 or 8",
                "# | 3, 4, 6 or 8",
                "rgb(255 128) | the third value is missing",
                "rgb(255 128 0 | \")\" is missing",
                "rgb(255 128 0 0.5) | instead of \")\"",
                "rgb(255 128 0) red | \"red\" is too much",
                "rgb(255, 128 0) | either commas between all",
                "rgb(255, 50%, 0) | all three are numbers or",
                "rgb(255, none, 0) | all three are numbers or",
                "rgb(none, none, none) | all three are numbers or",
                "hsl(30, 100, 50) | percentages",
                "lab(50, 0, 0) | commas go with rgb and hsl only",
                "hsl(30px 100% 50%) | not in \"px\"",
                "hsl(30% 100% 50%) | not in \"%\"",
                "rgb(1deg 2 3) | without \"deg\"",
                "rgb(1. 2 3) | the second value is missing or no number",
                "oklch(70% 1e99 50) | far outside",
                "color(rec2020 1 0 0) | not \"rec2020\"",
                "color(1 0 0) | not \"1\"",
                "hsv(30 100% 100%) | no function \"hsv\"",
                "rgb(calc(1) 2 3) | the first value is missing or no number",
                "rgb(1 2 3 / x) | the alpha value",
                "rgb(1 2 3 / ) | the alpha value",
            })
    void mistakesAreNamed(String text, String what) {
        String message = assertThrows(IllegalArgumentException.class, () -> CssColour.colour(text))
                .getMessage();
        assertTrue(message.startsWith("\"" + text + "\""), message);
        assertTrue(message.contains(what), message);
        assertTrue(message.contains("write it like \""), message);
        assertFalse(message.contains("\n"), message);
    }

    /** What a message recommends is itself right. */
    @ParameterizedTest
    @ValueSource(
            strings = {"x", "#x", "rgb(", "hsl(", "hwb(", "lab(", "lch(", "oklab(", "oklch(", "color(", "color(xyz "})
    void adviceCanBeFollowed(String text) {
        String message = assertThrows(IllegalArgumentException.class, () -> CssColour.colour(text))
                .getMessage();
        String advice = message.substring(message.indexOf("write it like \"") + 15);
        assertEquals(
                1, CssColour.colour(advice.substring(0, advice.indexOf('"'))).alpha());
    }

    @Test
    void aColourThatMustCoverHasNoAlpha() {
        String message = assertThrows(IllegalArgumentException.class, () -> CssColour.parse("#ff800080"))
                .getMessage();
        assertEquals(
                "\"#ff800080\" has an alpha of 0.50, and the colour here must cover; leave its alpha out", message);
        assertEquals(CssColour.parse("#ff8000"), CssColour.parse("rgb(255 128 0 / 100%)"));
    }

    /** CSS Color Module Level 4, "Named Colors", has 148 of them. */
    @Test
    void allNames() {
        assertEquals(
                148,
                Vectors.of("colour").stream()
                        .filter(line -> line[0].matches("[a-z]+"))
                        .count());
    }
}
