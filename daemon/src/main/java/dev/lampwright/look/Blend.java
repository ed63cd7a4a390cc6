package dev.lampwright.look;

import java.util.Locale;

/**
 * How a layer goes together with what is below it. Source: W3C Compositing and Blending Level 1, sections 9.1.4, 9.1.14 and 10.1;
 * here in linear light.
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
    /** {@link #HARD_LIGHT} the other way round. */
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
     * @return for instance {@code color-dodge}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The blending function B of the standard.
     *
     * @param below the backdrop's colour, not premultiplied, 0 to 1
     * @param source the layer's colour, 0 to 1
     * @return the mixed colour, 0 to 1; the source itself for {@link #NORMAL} and {@link #PLUS_LIGHTER}
     */
    float mix(float below, float source) {
        return switch (this) {
            case NORMAL, PLUS_LIGHTER -> source;
            case MULTIPLY -> below * source;
            case SCREEN -> screen(below, source);
            case OVERLAY -> hardLight(source, below);
            case DARKEN -> Math.min(below, source);
            case LIGHTEN -> Math.max(below, source);
            case COLOR_DODGE -> below == 0 ? 0 : source >= 1 ? 1 : Math.min(1, below / (1 - source));
            case COLOR_BURN -> below >= 1 ? 1 : source <= 0 ? 0 : 1 - Math.min(1, (1 - below) / source);
            case HARD_LIGHT -> hardLight(below, source);
            case SOFT_LIGHT -> softLight(below, source);
            case DIFFERENCE -> Math.abs(below - source);
            case EXCLUSION -> below + source - 2 * below * source;
        };
    }

    private static float screen(float below, float source) {
        return below + source - below * source;
    }

    private static float hardLight(float below, float source) {
        return source <= 0.5f ? below * 2 * source : screen(below, 2 * source - 1);
    }

    private static float softLight(float below, float source) {
        if (source <= 0.5f) {
            return below - (1 - 2 * source) * below * (1 - below);
        }
        float bent = below <= 0.25f ? ((16 * below - 12) * below + 4) * below : (float) Math.sqrt(below);
        return below + (2 * source - 1) * (bent - below);
    }
}
