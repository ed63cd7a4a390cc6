package dev.lampwright.colour;

/**
 * Turns linear light into a strip's bytes: calibration, white taken out for a strip with a white channel, the strip's own order of
 * channels, rounding. The duty of an LED is linear in its light, so there is no gamma here. Nothing is allocated while encoding.
 */
public final class Encoder {
    private static final int IN = 4;

    private final int channels;
    private final int[] source;
    private final PixelDuties drive;
    private final Rounding rounding;
    private final float[] duties = new float[IN];

    /**
     * Makes an encoder for a strip of which nothing is known but its order.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     * @throws IllegalArgumentException if it is none
     */
    public Encoder(String order) {
        this(order, Calibration.none());
    }

    /**
     * Makes an encoder that takes the nearest level.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     * @param calibration what is known of the strip
     * @throws IllegalArgumentException if the order is none
     */
    public Encoder(String order, Calibration calibration) {
        this(order, calibration, new NearestLevel());
    }

    private Encoder(String order, Calibration calibration, Rounding rounding) {
        requireOrder(order);
        channels = order.length();
        source = order.chars().map("RGBW"::indexOf).toArray();
        drive = new PixelDuties(calibration, order.indexOf('W') >= 0);
        this.rounding = rounding;
    }

    /**
     * Makes an encoder that dithers in time: what rounding leaves over is carried to the next frame, so that the mean is exact. A
     * pixel much darker than one level blinks slowly, at its share of a level times the frame rate.
     *
     * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
     * @param calibration what is known of the strip
     * @param pixels the most pixels of a strip that is encoded
     * @return an encoder for this strip alone, frame after frame
     * @throws IllegalArgumentException if the order is none
     */
    public static Encoder dithering(String order, Calibration calibration, int pixels) {
        return new Encoder(order, calibration, new Dithering(order.length() * pixels));
    }

    /**
     * Encodes a whole strip.
     *
     * @param rgba premultiplied linear light, four floats a pixel; what lies outside 0 to 1 is cut off, NaN is dark
     * @param strip where to write, as many bytes a pixel as the strip has channels
     */
    public void encode(float[] rgba, byte[] strip) {
        int in = 0;
        for (int out = 0; out < strip.length; out += channels) {
            drive.pixel(rgba, in, duties);
            strip[out] = rounding.level(duties[source[0]], out);
            strip[out + 1] = rounding.level(duties[source[1]], out + 1);
            strip[out + 2] = rounding.level(duties[source[2]], out + 2);
            if (channels == 4) {
                strip[out + 3] = rounding.level(duties[source[3]], out + 3);
            }
            in += IN;
        }
    }

    private static void requireOrder(String order) {
        String sorted = order.chars()
                .sorted()
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        if (!sorted.equals("BGR") && !sorted.equals("BGRW")) {
            throw new IllegalArgumentException("\"" + order
                    + "\" is no order of channels; write R, G and B once each, and W once for a strip with white");
        }
    }
}
