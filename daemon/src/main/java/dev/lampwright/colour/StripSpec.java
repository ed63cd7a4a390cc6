package dev.lampwright.colour;

/**
 * Describes how a strip takes light: its channels and what its LEDs make of their duties. Immutable; one description can make any number of
 * encoders.
 *
 * @param pixels how many there are, 0 or more
 * @param order the strip's order of channels, a permutation of {@code RGB} or of {@code RGBW}
 * @param calibration what is known about its LEDs
 * @param dithering whether the rounding error is carried to the next frame, so that the mean over time is exact. A pixel much darker than
 *     one level then blinks slowly, at its share of a level times the frame rate
 */
public record StripSpec(int pixels, String order, Calibration calibration, boolean dithering) {
    /**
     * Checks the strip.
     *
     * @throws IllegalArgumentException if the order is not valid, or the number of pixels is negative
     */
    public StripSpec {
        requireOrder(order);
        if (pixels < 0) {
            throw new IllegalArgumentException(pixels + " pixels; a strip has 0 or more");
        }
    }

    /**
     * A strip of which only the order is known, without dithering.
     *
     * @param pixels how many there are, 0 or more
     * @param order its order of channels
     * @return the strip
     * @throws IllegalArgumentException as above
     */
    public static StripSpec plain(int pixels, String order) {
        return new StripSpec(pixels, order, Calibration.none(), false);
    }

    /**
     * Whether the strip has white LEDs.
     *
     * @return true if it has four channels
     */
    public boolean hasWhite() {
        return order.indexOf('W') >= 0;
    }

    /**
     * Creates the encoder that turns light into this strip's bytes.
     *
     * @return a new encoder, which has carried nothing over yet
     */
    public Encoder make() {
        return new Encoder(this);
    }

    private static void requireOrder(String order) {
        String sorted = order.chars()
                .sorted()
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        if (!sorted.equals("BGR") && !sorted.equals("BGRW")) {
            throw new IllegalArgumentException("\"" + order
                    + "\" is not an order of channels; write R, G and B once each, and W once for a strip with white");
        }
    }
}
