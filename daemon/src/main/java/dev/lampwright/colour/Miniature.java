package dev.lampwright.colour;

import java.util.stream.IntStream;

/**
 * A strip in few colours: it is cut into stretches of equal length, give or take a pixel, and each becomes the mean of its linear light.
 * For one thread.
 */
public final class Miniature {
    /** The maximum number of colours. */
    public static final int MOST = 32;

    private static final int CHANNELS = 3;
    private static final int STEPS = 4095;
    private static final int FULL = 255;
    private static final double HALF = 0.5;
    private static final byte[] ENCODED = encoded();

    private final Decoder decoder;
    private final byte[] rgb;
    /** Where each stretch begins, and the last one ends. */
    private final int[] starts;
    /** The sum of a stretch that is lit in full. */
    private final double[] fulls;

    private final int[] sums = new int[CHANNELS];

    /**
     * Makes one that is dark.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     * @param pixels how many the strip has, 1 or more
     */
    public Miniature(String order, int pixels) {
        this(order, pixels, MOST);
    }

    /**
     * Makes one that is dark.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     * @param pixels how many the strip has, 1 or more
     * @param most the most colours, 1 or more
     */
    public Miniature(String order, int pixels, int most) {
        decoder = new Decoder(order);
        int colours = Math.min(most, pixels);
        rgb = new byte[CHANNELS * colours];
        starts =
                IntStream.rangeClosed(0, colours).map(i -> i * pixels / colours).toArray();
        fulls = IntStream.range(0, colours)
                .mapToDouble(i -> FULL * (starts[i + 1] - starts[i]))
                .toArray();
    }

    /**
     * Takes in what the strip shows. Allocates nothing.
     *
     * @param strip the strip's bytes in its own order
     * @return whether any colour has changed
     */
    public boolean take(byte[] strip) {
        boolean differs = false;
        for (int i = 0; i < fulls.length; i++) {
            decoder.sum(strip, starts[i], starts[i + 1], sums);
            for (int channel = 0; channel < CHANNELS; channel++) {
                byte level = ENCODED[(int) (sums[channel] * (double) STEPS / fulls[i] + HALF)];
                int at = i * CHANNELS + channel;
                differs |= level != rgb[at];
                rgb[at] = level;
            }
        }
        return differs;
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
            table[i] = (byte) Math.round(FULL * Srgb.encode((double) i / STEPS));
        }
        return table;
    }
}
