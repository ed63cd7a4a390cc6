package dev.lampwright.colour;

/** Conversions from the colour spaces of CSS to linear light. Source: CSS Color Module Level 4; the section is named at each. */
final class Conversions {
    /** Linear Display P3 to CIE XYZ, D65; "Sample code for Color Conversions". */
    private static final Matrix P3_TO_XYZ = new Matrix(
            608311.0 / 1250200,
            189793.0 / 714400,
            198249.0 / 1000160,
            35783.0 / 156275,
            247089.0 / 357200,
            198249.0 / 2500400,
            0,
            32229.0 / 714400,
            5220557.0 / 5000800);

    /** Bradford's adaptation from D50 to D65; "Sample code for Color Conversions". */
    private static final Matrix D50_TO_D65 = new Matrix(
            0.955473421488075,
            -0.02309845494876471,
            0.06325924320057072,
            -0.0283697093338637,
            1.0099953980813041,
            0.021041441191917323,
            0.012314014864481998,
            -0.020507649298898964,
            1.330365926242124);

    /** The white of D50, "Specifying Lab and LCH", from x = 0.3457, y = 0.3585. */
    private static final Triple D50 = new Triple(0.3457 / 0.3585, 1, (1 - 0.3457 - 0.3585) / 0.3585);

    /** CIE Lab's constants as exact fractions; CIE 15. */
    private static final double EPSILON = 216.0 / 24389;

    private static final double KAPPA = 24389.0 / 27;

    private Conversions() {}

    /**
     * To linear light.
     *
     * @param space the space
     * @param coordinates in that space, none missing
     * @return the same colour
     */
    static Rgb rgb(Space space, Triple coordinates) {
        return switch (space) {
            case SRGB -> srgb(coordinates);
            case SRGB_LINEAR -> Rgb.of(coordinates);
            case DISPLAY_P3 -> displayP3(coordinates);
            case XYZ_D65 -> Rgb.ofXyz(coordinates);
            case XYZ_D50 -> xyzD50(coordinates);
            case HSL -> hsl(coordinates);
            case HWB -> hwb(coordinates);
            case LAB -> lab(coordinates);
            case LCH -> lab(rectangular(coordinates));
            case OKLAB -> oklab(coordinates);
            case OKLCH -> oklab(rectangular(coordinates));
        };
    }

    private static Rgb srgb(Triple encoded) {
        return Rgb.of(encoded.each(Srgb::decode));
    }

    private static Rgb displayP3(Triple encoded) {
        return Rgb.ofXyz(P3_TO_XYZ.times(encoded.each(Srgb::decode)));
    }

    private static Rgb xyzD50(Triple xyz) {
        return Rgb.ofXyz(D50_TO_D65.times(xyz));
    }

    /** "Converting HSL Colors to sRGB". */
    private static Rgb hsl(Triple hsl) {
        return srgb(hslEncoded(hsl.first(), hsl.second() / 100, hsl.third() / 100));
    }

    /** "Converting HWB Colors to sRGB". */
    private static Rgb hwb(Triple hwb) {
        double white = hwb.second() / 100;
        double black = hwb.third() / 100;
        double sum = white + black;
        if (sum >= 1) {
            double grey = white / sum;
            return srgb(new Triple(grey, grey, grey));
        }
        return srgb(hslEncoded(hwb.first(), 1, 0.5).each(value -> value * (1 - sum) + white));
    }

    /** "Converting Lab Colors to XYZ", sample code. */
    private static Rgb lab(Triple lab) {
        double y = (lab.first() + 16) / 116;
        double x = lab.second() / 500 + y;
        double z = y - lab.third() / 200;
        return xyzD50(new Triple(
                D50.first() * unfold(x),
                lab.first() > KAPPA * EPSILON ? y * y * y : lab.first() / KAPPA,
                D50.third() * unfold(z)));
    }

    private static Rgb oklab(Triple lab) {
        return new Oklab(lab.first(), lab.second(), lab.third()).rgb();
    }

    /** From lightness, chroma and hue in degrees to lightness, a and b. */
    private static Triple rectangular(Triple polar) {
        double angle = Math.toRadians(polar.third());
        return new Triple(polar.first(), polar.second() * Math.cos(angle), polar.second() * Math.sin(angle));
    }

    private static double unfold(double value) {
        double cube = value * value * value;
        return cube > EPSILON ? cube : (116 * value - 16) / KAPPA;
    }

    private static Triple hslEncoded(double hue, double saturation, double lightness) {
        double reach = saturation * Math.min(lightness, 1 - lightness);
        return new Triple(0, 8, 4).each(offset -> {
            double twelfth = turned(offset + hue / 30, 12);
            return lightness - reach * Math.max(-1, Math.min(1, Math.min(twelfth - 3, 9 - twelfth)));
        });
    }

    private static double turned(double value, double turn) {
        double rest = value % turn;
        return rest < 0 ? rest + turn : rest;
    }
}
