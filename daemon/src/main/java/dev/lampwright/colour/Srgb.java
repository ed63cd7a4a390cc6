package dev.lampwright.colour;

/** The transfer function of sRGB. Source: IEC 61966-2-1:1999, section 5.2. */
public final class Srgb {
    private static final double LINEAR_BELOW = 0.04045;
    private static final double SLOPE = 12.92;
    private static final double OFFSET = 0.055;
    private static final double EXPONENT = 2.4;

    private Srgb() {}

    /**
     * From an encoded value to light.
     *
     * @param encoded 0 to 1
     * @return linear light, 0 to 1
     */
    public static double decode(double encoded) {
        return encoded <= LINEAR_BELOW ? encoded / SLOPE : Math.pow((encoded + OFFSET) / (1 + OFFSET), EXPONENT);
    }

    /**
     * From light to an encoded value.
     *
     * @param light linear light, 0 to 1
     * @return encoded, 0 to 1
     */
    public static double encode(double light) {
        return light <= LINEAR_BELOW / SLOPE ? light * SLOPE : (1 + OFFSET) * Math.pow(light, 1 / EXPONENT) - OFFSET;
    }
}
