package dev.lampwright.colour;

/**
 * A colour in OKLab, where equal steps look alike. Source: B. Ottosson, "A perceptual color space for image processing", 2020,
 * with the matrices for linear sRGB given there.
 *
 * @param lightness 0 to 1
 * @param a green to red, about −0.4 to 0.4
 * @param b blue to yellow, about −0.4 to 0.4
 */
public record Oklab(double lightness, double a, double b) {
    /**
     * From linear light.
     *
     * @param light the colour
     * @return the same colour in OKLab
     */
    public static Oklab of(Light light) {
        double red = light.red();
        double green = light.green();
        double blue = light.blue();
        double l = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
        double m = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
        double s = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
        return new Oklab(
                0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
                1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
                0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s);
    }

    /**
     * To linear light. What a screen or strip cannot show is cut off channel by channel.
     *
     * @return the same colour, or the nearest that is cut off
     */
    public Light light() {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        return new Light(
                cut(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
                cut(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
                cut(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s));
    }

    /**
     * A colour on the straight line to another.
     *
     * @param to the other colour
     * @param share how far to go, 0 to 1
     * @return the colour there
     */
    public Oklab towards(Oklab to, double share) {
        return new Oklab(
                lightness + (to.lightness - lightness) * share, a + (to.a - a) * share, b + (to.b - b) * share);
    }

    private static double cube(double value) {
        return value * value * value;
    }

    private static float cut(double value) {
        return (float) Math.max(0, Math.min(1, value));
    }
}
