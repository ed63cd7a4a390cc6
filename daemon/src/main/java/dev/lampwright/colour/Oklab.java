package dev.lampwright.colour;

/**
 * A colour in OKLab, where equal steps look equal. Source: B. Ottosson, "A perceptual color space for image processing", 2020, with the
 * matrices of CSS Color Module Level 4: recalculated so that white is exactly neutral.
 *
 * @param lightness 0 to 1
 * @param a green to red, about −0.4 to 0.4
 * @param b blue to yellow, about −0.4 to 0.4
 */
public record Oklab(double lightness, double a, double b) {
    private static final Matrix XYZ_TO_CONES = new Matrix(
            0.819022437996703,
            0.3619062600528904,
            -0.1288737815209879,
            0.0329836539323885,
            0.9292868615863434,
            0.0361446663506424,
            0.0481771893596242,
            0.2642395317527308,
            0.6335478284694309);

    private static final Matrix ROOTS_TO_LAB = new Matrix(
            0.210454268309314,
            0.7936177747023054,
            -0.0040720430116193,
            1.9779985324311684,
            -2.42859224204858,
            0.450593709617411,
            0.0259040424655478,
            0.7827717124575296,
            -0.8086757549230774);

    private static final Matrix TO_CONES = XYZ_TO_CONES.times(Rgb.TO_XYZ);
    private static final Matrix FROM_CONES = TO_CONES.inverse();
    private static final Matrix LAB_TO_ROOTS = ROOTS_TO_LAB.inverse();

    /**
     * From linear light.
     *
     * @param light the colour
     * @return the same colour in OKLab
     */
    public static Oklab of(Light light) {
        return of(Rgb.of(light));
    }

    static Oklab of(Rgb rgb) {
        Triple lab = ROOTS_TO_LAB.times(TO_CONES.times(rgb.numbers()).each(Math::cbrt));
        return new Oklab(lab.first(), lab.second(), lab.third());
    }

    /**
     * To linear light. Colours that cannot be shown are mapped as in CSS Color Module Level 4, "Gamut Mapping".
     *
     * @return the same colour, or its replacement
     */
    public Light light() {
        return GamutMap.light(this);
    }

    /**
     * The distance to another colour: deltaEOK, the distance in OKLab. Source: CSS Color Module Level 4, "Color Difference".
     *
     * @param other the other colour
     * @return 0 for the same; about 0.02 is just noticeable; black to white is 1
     */
    public double difference(Oklab other) {
        return Math.hypot(lightness - other.lightness, Math.hypot(a - other.a, b - other.b));
    }

    Rgb rgb() {
        Triple cones = LAB_TO_ROOTS.times(new Triple(lightness, a, b)).each(root -> root * root * root);
        return Rgb.of(FROM_CONES.times(cones));
    }
}
