package dev.lampwright.colour;

/**
 * Turns linear light into a strip's bytes: white taken out for a strip with a white channel, the strip's own order of channels,
 * rounding. The duty of an LED is linear in its light, so there is no gamma here.
 */
public final class Encoder {
    private static final float FULL = 255;

    private final int channels;
    private final int redAt;
    private final int greenAt;
    private final int blueAt;
    private final int whiteAt;

    /**
     * Makes an encoder.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     */
    public Encoder(String order) {
        channels = order.length();
        redAt = order.indexOf('R');
        greenAt = order.indexOf('G');
        blueAt = order.indexOf('B');
        whiteAt = order.indexOf('W');
    }

    /**
     * Encodes a whole strip.
     *
     * @param rgba premultiplied linear light, four floats a pixel; what lies outside 0 to 1 is cut off
     * @param strip where to write, as many bytes a pixel as the strip has channels
     */
    public void encode(float[] rgba, byte[] strip) {
        int in = 0;
        for (int out = 0; out < strip.length; out += channels) {
            float white = whiteAt < 0 ? 0 : Math.min(rgba[in], Math.min(rgba[in + 1], rgba[in + 2]));
            strip[out + redAt] = level(rgba[in] - white);
            strip[out + greenAt] = level(rgba[in + 1] - white);
            strip[out + blueAt] = level(rgba[in + 2] - white);
            if (whiteAt >= 0) {
                strip[out + whiteAt] = level(white);
            }
            in += 4;
        }
    }

    private static byte level(float light) {
        return (byte) (Math.max(0, Math.min(1, light)) * FULL + 0.5f);
    }
}
