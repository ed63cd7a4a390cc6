package dev.lampwright.colour;

/** The transfer function of sRGB. Source: IEC 61966-2-1:1999, section 5.2; below zero it is mirrored, as in CSS Color Module Level 4. */
public final class Srgb {
    private static final double LINEAR_BELOW = 0.04045;
    private static final double SLOPE = 12.92;
    private static final double OFFSET = 0.055;
    private static final double EXPONENT = 2.4;

    private Srgb() {}

    /**
     * From an encoded value to light.
     *
     * @param encoded 0 to 1, or outside for a colour that sRGB cannot show
     * @return linear light, 0 to 1 for 0 to 1
     */
    public static double decode(double encoded) {
        double size = Math.abs(encoded);
        double light = size <= LINEAR_BELOW ? size / SLOPE : Math.pow((size + OFFSET) / (1 + OFFSET), EXPONENT);
        return Math.copySign(light, encoded);
    }

    /**
     * From light to an encoded value.
     *
     * @param light linear light, 0 to 1, or outside for a colour that sRGB cannot show
     * @return encoded, 0 to 1 for 0 to 1
     */
    public static double encode(double light) {
        double size = Math.abs(light);
        double encoded =
                size <= LINEAR_BELOW / SLOPE ? size * SLOPE : (1 + OFFSET) * Math.pow(size, 1 / EXPONENT) - OFFSET;
        return Math.copySign(encoded, light);
    }
}
