package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.check.FlashCheck;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** An ember with default keys looks like a fire on strips of any length, and never flashes. */
class FireTest {
    private static final int SECONDS = 20;
    private static final int RATE = 60;

    private static Config config(int pixels, String order) {
        return Configs.of(pixels, order, "[looks.fire]\nlayers = [{ paint = \"ember\" }]\n");
    }

    @ParameterizedTest
    @CsvSource({"8, GRB", "10, GRB", "30, GRB", "30, GRBW", "60, GRB", "144, GRB"})
    void passesTheFlashCheck(int pixels, String order) {
        assertEquals(
                0,
                FlashCheck.of(config(pixels, order)).stream()
                        .filter(flashing -> flashing.look().equals("fire"))
                        .count());
    }

    /**
     * What makes it look like a fire, in relative luminance (WCAG 2.2, of linear light): hollows that still glow, flames several times as
     * bright, never entirely dark or entirely full; more red than green and more green than blue; and flames wider than a pixel. The bounds
     * are our own, from what looked right.
     */
    @ParameterizedTest
    @ValueSource(ints = {10, 30, 60, 144})
    void hasHollowsAndFlames(int pixels) {
        Config config = config(pixels, "GRB");
        LightSpec light = config.light().showing(config.looks().get("fire"));
        Chain chain = Chain.of(config.setup(), light, RATE);
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        float[] all = new float[SECONDS * pixels];
        double besides = 0;
        double apart = 0;
        for (int i = 0; i < SECONDS * RATE; i++) {
            chain.make(PrinterStatus.nothingHeard(), i * 1_000_000_000L / RATE, frame);
            if (i % RATE == 0) {
                float[] now = luminances(chain.light().rgba(), pixels);
                System.arraycopy(now, 0, all, i / RATE * pixels, pixels);
                for (int pixel = 1; pixel < pixels; pixel++) {
                    besides += Math.abs(now[pixel] - now[pixel - 1]);
                    apart += Math.abs(now[pixel] - now[(pixel + pixels / 2) % pixels]);
                }
            }
        }
        Arrays.sort(all);
        float hollow = all[all.length / 20];
        float flame = all[all.length * 19 / 20];
        assertTrue(hollow > 0.004 && hollow < 0.05, "hollows at " + hollow);
        assertTrue(flame > 0.15 && flame < 0.4, "flames at " + flame);
        assertTrue(besides < 0.8 * apart, "neighbours differ by " + besides / apart + " of what others do");
    }

    private static float[] luminances(float[] rgba, int pixels) {
        float[] luminances = new float[pixels];
        for (int i = 0; i < pixels; i++) {
            float red = rgba[4 * i];
            float green = rgba[4 * i + 1];
            float blue = rgba[4 * i + 2];
            assertTrue(red >= green && green >= blue);
            luminances[i] = 0.2126f * red + 0.7152f * green + 0.0722f * blue;
        }
        return luminances;
    }
}
