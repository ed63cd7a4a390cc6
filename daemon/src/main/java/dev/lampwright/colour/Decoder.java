package dev.lampwright.colour;

/**
 * Converts a strip's bytes back to light, as far as a screen can show it: resolves the strip's order of channels, and adds white to each of
 * the three colours. The effect of calibration stays: a screen shows the bytes as a strip with the sRGB primaries would.
 */
public final class Decoder {
    private static final int FULL_BYTE = 255;
    private static final float FULL = FULL_BYTE;
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
     * Adds up the light of a run of pixels, in whole numbers. Allocates nothing.
     *
     * @param strip the strip's bytes in its own order
     * @param from the first pixel
     * @param to the pixel after the last
     * @param sums takes the sum of red, green and blue, each in 1/255 of full light; runs of up to 8 million pixels fit
     */
    public void sum(byte[] strip, int from, int to, int[] sums) {
        int red = 0;
        int green = 0;
        int blue = 0;
        int redAt = places[0];
        int greenAt = places[1];
        int blueAt = places[2];
        int end = to * channels;
        for (int at = from * channels; at < end; at += channels) {
            int added = white < 0 ? 0 : strip[at + white] & 0xFF;
            red += Math.min(FULL_BYTE, (strip[at + redAt] & 0xFF) + added);
            green += Math.min(FULL_BYTE, (strip[at + greenAt] & 0xFF) + added);
            blue += Math.min(FULL_BYTE, (strip[at + blueAt] & 0xFF) + added);
        }
        sums[0] = red;
        sums[1] = green;
        sums[2] = blue;
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
