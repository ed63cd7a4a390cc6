package dev.lampwright.colour;

/**
 * Linear light with the primaries and the white of sRGB, not mapped to what can be shown.
 *
 * @param red 0 to 1 if it can be shown
 * @param green 0 to 1 where it can be shown
 * @param blue 0 to 1 where it can be shown
 */
record Rgb(double red, double green, double blue) {
    /** Linear sRGB to CIE XYZ, white at Y = 1. Source: CSS Color Module Level 4, "Sample code for Color Conversions", as fractions. */
    static final Matrix TO_XYZ = new Matrix(
            506752.0 / 1228815,
            87881.0 / 245763,
            12673.0 / 70218,
            87098.0 / 409605,
            175762.0 / 245763,
            12673.0 / 175545,
            7918.0 / 409605,
            87881.0 / 737289,
            1001167.0 / 1053270);

    /** CIE XYZ to linear sRGB. */
    static final Matrix FROM_XYZ = TO_XYZ.inverse();

    /**
     * From three numbers in this order.
     *
     * @param numbers red, green, blue
     * @return the same
     */
    static Rgb of(Triple numbers) {
        return new Rgb(numbers.first(), numbers.second(), numbers.third());
    }

    /**
     * From light that can be shown.
     *
     * @param light the light
     * @return the same
     */
    static Rgb of(Light light) {
        return new Rgb(light.red(), light.green(), light.blue());
    }

    /**
     * From CIE XYZ, relative to D65.
     *
     * @param xyz X, Y and Z, white at Y = 1
     * @return the same colour
     */
    static Rgb ofXyz(Triple xyz) {
        return of(FROM_XYZ.times(xyz));
    }

    /**
     * The three numbers.
     *
     * @return red, green, blue
     */
    Triple numbers() {
        return new Triple(red, green, blue);
    }

    /**
     * Whether it can be shown.
     *
     * @return true if all three are 0 to 1
     */
    boolean inGamut() {
        Triple numbers = numbers();
        return numbers.least() >= 0 && numbers.most() <= 1;
    }

    /**
     * Clips, channel by channel, what cannot be shown.
     *
     * @return a colour that can be shown
     */
    Rgb clipped() {
        return of(numbers().each(value -> Math.max(0, Math.min(1, value))));
    }

    /**
     * The light, channel by channel.
     *
     * @return the same, with what cannot be shown clipped
     */
    Light light() {
        Rgb shown = clipped();
        return new Light((float) shown.red, (float) shown.green, (float) shown.blue);
    }
}
