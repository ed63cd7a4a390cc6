package dev.lampwright.look;

import java.util.Locale;

/**
 * How a layer is combined with what is below it. Source: W3C Compositing and Blending Level 1, sections 9.1.4, 9.1.14 and 10.1; here in
 * linear light.
 */
public enum Blend {
    /** The layer covers what is below: source-over. */
    NORMAL,
    /** Light is added: plus-lighter. */
    PLUS_LIGHTER,
    /** The product. */
    MULTIPLY,
    /** The complement of the product of the complements. */
    SCREEN,
    /** {@link #HARD_LIGHT} with backdrop and layer swapped. */
    OVERLAY,
    /** The darker of the two. */
    DARKEN,
    /** The lighter of the two. */
    LIGHTEN,
    /** What is below, brightened by the layer. */
    COLOR_DODGE,
    /** What is below, darkened by the layer. */
    COLOR_BURN,
    /** {@link #MULTIPLY} or {@link #SCREEN}, as the layer is dark or light. */
    HARD_LIGHT,
    /** A softer {@link #HARD_LIGHT}. */
    SOFT_LIGHT,
    /** The difference of the two. */
    DIFFERENCE,
    /** Like {@link #DIFFERENCE}, with less contrast. */
    EXCLUSION;

    /**
     * The word for this in the configuration: that of the standard.
     *
     * @return for example {@code color-dodge}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The blending function B of the standard, for a backdrop premultiplied with its alpha αb: αb B(Cb, Cs), so no division is needed.
     *
     * @param below the backdrop's colour, multiplied with its alpha: αb Cb
     * @param alpha the backdrop's alpha αb, 0 to 1
     * @param source the layer's colour Cs, 0 to 1
     * @return the mixed colour, multiplied with the backdrop's alpha, 0 to {@code alpha}; the source for {@link #NORMAL} and
     *     {@link #PLUS_LIGHTER}
     */
    float mix(float below, float alpha, float source) {
        return switch (this) {
            case NORMAL, PLUS_LIGHTER -> alpha * source;
            case MULTIPLY -> below * source;
            case SCREEN -> screen(below, alpha, source);
            case OVERLAY ->
                2 * below <= alpha ? 2 * below * source : alpha * source + (2 * below - alpha) * (1 - source);
            case DARKEN -> Math.min(below, alpha * source);
            case LIGHTEN -> Math.max(below, alpha * source);
            case COLOR_DODGE -> below == 0 ? 0 : source >= 1 ? alpha : Math.min(alpha, below / (1 - source));
            case COLOR_BURN ->
                below >= alpha ? alpha : source <= 0 ? 0 : alpha - Math.min(alpha, (alpha - below) / source);
            case HARD_LIGHT -> source <= 0.5f ? 2 * below * source : screen(below, alpha, 2 * source - 1);
            case SOFT_LIGHT -> alpha == 0 ? 0 : alpha * softLight(below / alpha, source);
            case DIFFERENCE -> Math.abs(below - alpha * source);
            case EXCLUSION -> below + alpha * source - 2 * below * source;
        };
    }

    private static float screen(float below, float alpha, float source) {
        return below + (alpha - below) * source;
    }

    private static float softLight(float below, float source) {
        if (source <= 0.5f) {
            return below - (1 - 2 * source) * below * (1 - below);
        }
        float bent = below <= 0.25f ? ((16 * below - 12) * below + 4) * below : (float) Math.sqrt(below);
        return below + (2 * source - 1) * (bent - below);
    }
}
