package dev.lampwright.colour;

/**
 * A strip in few colours: it is cut into stretches of equal length, give or take a pixel, and each becomes the mean of its linear light.
 * For one thread.
 */
public final class Miniature {
    /** The maximum number of colours. */
    public static final int MOST = 32;

    private static final int CHANNELS = 3;
    private static final int STEPS = 4095;
    private static final byte[] ENCODED = encoded();

    private final Decoder decoder;
    private final int pixels;
    private final byte[] rgb;

    /**
     * Makes one that is dark.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     * @param pixels how many the strip has, 1 or more
     */
    public Miniature(String order, int pixels) {
        decoder = new Decoder(order);
        this.pixels = pixels;
        rgb = new byte[CHANNELS * Math.min(MOST, pixels)];
    }

    /**
     * Takes in what the strip shows.
     *
     * @param strip the strip's bytes in its own order
     * @return whether any colour has changed
     */
    public boolean take(byte[] strip) {
        int colours = rgb.length / CHANNELS;
        boolean differs = false;
        for (int i = 0; i < colours; i++) {
            int from = i * pixels / colours;
            int to = (i + 1) * pixels / colours;
            for (int channel = 0; channel < CHANNELS; channel++) {
                byte level = level(strip, from, to, channel);
                differs |= level != rgb[i * CHANNELS + channel];
                rgb[i * CHANNELS + channel] = level;
            }
        }
        return differs;
    }

    private byte level(byte[] strip, int from, int to, int channel) {
        float sum = 0;
        for (int pixel = from; pixel < to; pixel++) {
            sum += decoder.light(strip, pixel, channel);
        }
        return ENCODED[Math.round(sum / (to - from) * STEPS)];
    }

    /**
     * The colours from the controller on, as a screen shows them.
     *
     * @return red, green and blue of each, encoded as sRGB, 0 to 255; always the same array
     */
    public byte[] rgb() {
        return rgb;
    }

    private static byte[] encoded() {
        byte[] table = new byte[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            table[i] = (byte) Math.round(255 * Srgb.encode((double) i / STEPS));
        }
        return table;
    }
}
