package dev.lampwright.tool.plan;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The current formula, pixels × idle + Σ duty × channel, against what others measured on strips and published. */
class PublishedCurrentsTest {
    private static final int PIXELS = 14;

    /**
     * A strip of WS2812B of which 1 to 14 pixels were lit (repository floriansto/wordclock, current_analysis.ipynb): its regressions have 11.15 to 11.21 mA a channel at full
     * and 11.4 mA (10.7 to 11.9) when nothing is lit. Told so, with the idle current of its pixels as 0.8 mA each, the formula must give all 34 readings: those of red, green and blue
     * alone, yellow, and white, at full and at half brightness (taken as level 127). 2 % and 1 mA, for the meter has three digits.
     */
    @ParameterizedTest
    @CsvSource({
        "255, 1 1 1, 45 178 345 477",
        "255, 1 1 0, 33.2 123 233 322",
        "255, 1 0 0, 22.5 67 122.9 167.4",
        "255, 0 1 0, 22.7 67.3 123.3 168.4",
        "255, 0 0 1, 22.7 67.2 123.4 168",
        "127, 1 1 1, 27.5 94.8 177 243",
        "127, 1 0 0, 16.2 38.6 66.4 88.5",
        "127, 0 1 0, 16.3 38.7 66.6 89",
        "127, 0 0 1, 16.3 38.7 66.7 88.9"
    })
    void aStripOfAWordClock(int level, String channels, String readings) {
        Setup setup = Rigs.of("""
                        supply.ceiling_mA = 60000
                        strip = { pixels = 14, order = "RGB", channel_mA = 11.18, idle_mA = 0.8 }
                        """).setup();
        double[] lit = numbers(channels);
        double[] measured = numbers(readings);
        int[] counts = {1, 5, 10, PIXELS};
        for (int i = 0; i < counts.length; i++) {
            Frame frame = new Frame(PIXELS * 3, 0);
            for (int at = 0; at < counts[i] * 3; at++) {
                frame.strip()[at] = (byte) (lit[at % 3] * level);
            }
            double milliamps = (double) new SupplyDraw(setup).load(0, frame) / SupplyDraw.GRAINS_PER_MILLIAMP;
            assertEquals(
                    measured[i],
                    milliamps + new SupplyDraw(setup).idle(0) / (double) SupplyDraw.GRAINS_PER_MILLIAMP,
                    1 + 0.02 * measured[i]);
        }
    }

    private static double[] numbers(String words) {
        return Arrays.stream(words.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    /**
     * Whole pixels at full white, in mA, as four others measured them: two kinds of WS2812B (pjrc.com, on how much current these pixels really use: 33.5 and 52.5, and just under 1 dark),
     * 16 pixels with 660 mA (accessiblepixel.com, 2018: 41.25), and 144 pixels with 1933 mA, of which much is lost on the strip itself (fabacademy.org, Bottrop, 2026). Without
     * a measurement the default is above all of them.
     */
    @ParameterizedTest
    @CsvSource({"1, 33.5", "1, 52.5", "16, 660", "144, 1933"})
    void theDefaultIsAboveWhatOthersMeasured(int pixels, double milliamps) {
        PlannedLights rig = Rigs.of("strip.pixels = " + pixels + "\n");
        assertAtMost(1000 * new Loads(rig).full(0), milliamps);
    }

    @Test
    void aDarkPixelTakesNoMoreThanTheDefault() {
        PlannedLights rig = Rigs.of("strip.pixels = 1\n");
        assertEquals(1, 1000 * new Loads(rig).darkPixel(), 1e-9, "pjrc.com: just under 1 mA");
    }
}
