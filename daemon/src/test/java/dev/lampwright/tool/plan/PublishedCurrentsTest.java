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
     * A strip of 14 WS2812B with 1, 5, 10 and 14 lit. Source: a notebook of measurements, current_analysis.ipynb, in the public repository
     * floriansto/wordclock. Its regressions give 11.15 to 11.21 mA a channel at full, and 11.4 mA (10.7 to 11.9) when nothing is lit. With
     * 0.8 mA for each dark pixel the formula must give all 36 readings: white, red, green and blue at full and at half brightness (taken as
     * level 127), and yellow at full. Within 2 % and 1 mA, because the meter shows three digits.
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
    void aMeasuredStrip(int level, String channels, String readings) {
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
     * Full white in mA as two others measured it: one pixel of two kinds of WS2812B with 33.5 and 52.5 (pjrc.com, an article on the current of WS2812 LEDs), and 144
     * pixels with 1933, much of which the strip itself loses (fabacademy.org, Bottrop, 2026). The default, without a measurement, is above all of them.
     */
    @ParameterizedTest
    @CsvSource({"1, 33.5", "1, 52.5", "144, 1933"})
    void theDefaultIsAboveWhatOthersMeasured(int pixels, double milliamps) {
        PlannedLights rig = Rigs.of("strip.pixels = " + pixels + "\n");
        assertAtMost(1000 * new Loads(rig).full(0), milliamps);
    }

    /** pjrc.com, the same article: just under 1 mA. */
    @Test
    void theDefaultForADarkPixelIsNotBelowWhatWasMeasured() {
        PlannedLights rig = Rigs.of("strip.pixels = 1\n");
        assertAtMost(1000 * new Loads(rig).darkPixel() + 1e-9, 1);
    }
}
