package dev.lampwright.colour;

/**
 * A colour as linear light with the primaries and the white of sRGB: doubling the number doubles the light.
 *
 * @param red 0 to 1
 * @param green 0 to 1
 * @param blue 0 to 1
 */
public record Light(float red, float green, float blue) {
    /** No light. */
    public static final Light BLACK = new Light(0, 0, 0);

    /** Full light. */
    public static final Light WHITE = new Light(1, 1, 1);

    /**
     * How bright it is.
     *
     * @return relative luminance, the Y of CIE XYZ, 0 to 1
     */
    public double luminance() {
        return Rgb.TO_XYZ.times(Rgb.of(this).numbers()).second();
    }
}
