package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.colour.Encoder;
import org.junit.jupiter.api.Test;

/** The effect of the strip's keys on light; the tests of the colours themselves check how accurate it is. */
class StripColoursTest {
    private static Encoder encoder(String keys) throws ConfigException {
        return ConfigFile.read("""
                        broker.url = "mqtt://alder"
                        printer.readings.bed.actual_C.topic = "shop/alder/heat"
                        controller.port = "/dev/ttyACM0"
                        strip = { pixels = 1, %s }
                        """.formatted(keys), "t.toml").light().strip().make();
    }

    private static int[] levels(Encoder encoder, int channels, float... rgb) {
        byte[] strip = new byte[channels];
        encoder.encode(new float[] {rgb[0], rgb[1], rgb[2], 1}, strip);
        int[] levels = new int[channels];
        for (int i = 0; i < channels; i++) {
            levels[i] = strip[i] & 0xFF;
        }
        return levels;
    }

    @Test
    void gainsTakeStrongChannelsBack() throws ConfigException {
        assertArrayEquals(
                new int[] {204, 255, 51}, levels(encoder("order = \"GRB\", gains = [1, 0.8, 0.2]"), 3, 1, 1, 1));
    }

    @Test
    void whiteIsTakenOutByItsColour() throws ConfigException {
        int[] plain = levels(encoder("order = \"RGBW\""), 4, 0.5f, 0.5f, 0.5f);
        assertArrayEquals(new int[] {0, 0, 0, 128}, plain);
        int[] warm = levels(encoder("order = \"RGBW\", white_K = 3000"), 4, 0.5f, 0.5f, 0.5f);
        assertEquals(0, warm[0], "a warm white gives all the red there is");
        assertTrue(warm[2] > 50, "and leaves blue wanting: " + warm[2]);
    }

    @Test
    void whatWasMeasuredIsMadeUpFor() throws ConfigException {
        int[] levels = levels(encoder("""
                order = "RGB", measured = { red = { x = 0.64, y = 0.33, luminance = 21.26 }, \
                green = { x = 0.3, y = 0.6, luminance = 143.04 }, blue = { x = 0.15, y = 0.06, luminance = 7.22 } }"""), 3, 1, 1, 1);
        assertEquals(255, levels[0], 1);
        assertEquals(127.5, levels[1], 1, "the primaries of sRGB with a green twice as strong");
        assertEquals(255, levels[2], 1);
    }

    @Test
    void ditheringHasTheRightMean() throws ConfigException {
        Encoder encoder = encoder("order = \"RGB\", dithering = true");
        int sum = 0;
        for (int frame = 0; frame < 1000; frame++) {
            sum += levels(encoder, 3, 0.1f, 0, 0)[0];
        }
        assertEquals(25.5, sum / 1000.0, 0.002);
    }
}
