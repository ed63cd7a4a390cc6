package dev.lampwright.colour;

/**
 * A colour without its brightness: a point of the CIE 1931 diagram.
 *
 * @param x 0 to 1
 * @param y above 0, up to 1
 */
public record Chromaticity(double x, double y) {
    /** The white of sRGB. Source: IEC 61966-2-1, table 1. */
    public static final Chromaticity D65 = new Chromaticity(0.3127, 0.3290);

    /**
     * Creates a point.
     *
     * @throws IllegalArgumentException if no light has this chromaticity
     */
    public Chromaticity {
        if (!(x >= 0 && y > 0 && x + y <= 1)) {
            throw new IllegalArgumentException(
                    "x = " + x + ", y = " + y
                            + " is the chromaticity of no light; both are 0 or more, y is not 0, and together they are 1 at most");
        }
    }

    static Chromaticity of(Triple xyz) {
        double sum = xyz.first() + xyz.second() + xyz.third();
        return new Chromaticity(xyz.first() / sum, xyz.second() / sum);
    }

    /** CIE XYZ at a given luminance. */
    Triple xyz(double luminance) {
        return new Triple(x / y * luminance, luminance, (1 - x - y) / y * luminance);
    }
}
