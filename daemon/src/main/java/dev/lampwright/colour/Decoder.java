package dev.lampwright.colour;

/**
 * Converts a strip's bytes back to light, as far as a screen can show it: resolves the strip's order of channels, and adds white to each of
 * the three colours. The effect of calibration stays: a screen shows the bytes as a strip with the sRGB primaries would.
 */
public final class Decoder {
    private static final float FULL = 255f;
    private static final int COLOURS = 3;

    private final int channels;
    private final int[] places;
    private final int white;

    /**
     * Creates a decoder.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     */
    public Decoder(String order) {
        channels = order.length();
        places = "RGB".chars().map(order::indexOf).toArray();
        white = order.indexOf('W');
    }

    /**
     * How many pixels a strip has.
     *
     * @param strip the strip's bytes
     * @return pixels
     */
    public int pixels(byte[] strip) {
        return strip.length / channels;
    }

    /**
     * The light of one channel of one pixel.
     *
     * @param strip the strip's bytes in its own order
     * @param pixel its index on the strip
     * @param colour 0 red, 1 green, 2 blue
     * @return linear light, 0 to 1
     */
    public float light(byte[] strip, int pixel, int colour) {
        int at = pixel * channels;
        int added = white < 0 ? 0 : strip[at + white] & 0xFF;
        return Math.min(1, ((strip[at + places[colour]] & 0xFF) + added) / FULL);
    }

    /**
     * One pixel as a screen shows it.
     *
     * @param strip the strip's bytes in its own order
     * @param pixel its index on the strip
     * @return encoded sRGB, 0 to 1 for red, green and blue
     */
    public double[] screen(byte[] strip, int pixel) {
        double[] encoded = new double[COLOURS];
        for (int i = 0; i < COLOURS; i++) {
            encoded[i] = Srgb.encode(light(strip, pixel, i));
        }
        return encoded;
    }
}
