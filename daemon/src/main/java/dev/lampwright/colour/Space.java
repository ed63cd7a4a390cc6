package dev.lampwright.colour;

import java.util.List;

/** The spaces in which CSS writes colours. Source: CSS Color Module Level 4. */
enum Space {
    /** Red, green and blue of sRGB, encoded, 0 to 1. */
    SRGB(Role.RED, Role.GREEN, Role.BLUE),
    /** The same as linear light. */
    SRGB_LINEAR(Role.RED, Role.GREEN, Role.BLUE),
    /** Red, green and blue of Display P3, encoded as sRGB is, 0 to 1. */
    DISPLAY_P3(Role.RED, Role.GREEN, Role.BLUE),
    /** CIE XYZ relative to D65, white at Y = 1. */
    XYZ_D65(Role.RED, Role.GREEN, Role.BLUE),
    /** CIE XYZ relative to D50, white at Y = 1. */
    XYZ_D50(Role.RED, Role.GREEN, Role.BLUE),
    /** Hue in degrees, saturation and lightness 0 to 100. */
    HSL(Role.HUE, Role.COLOURFULNESS, Role.LIGHTNESS),
    /** Hue in degrees, whiteness and blackness 0 to 100. */
    HWB(Role.HUE, Role.WHITENESS, Role.BLACKNESS),
    /** CIE Lab relative to D50, L 0 to 100. */
    LAB(Role.LIGHTNESS, Role.A, Role.B),
    /** CIE Lab in polar form: L, chroma, hue in degrees. */
    LCH(Role.LIGHTNESS, Role.COLOURFULNESS, Role.HUE),
    /** OKLab, L 0 to 1. */
    OKLAB(Role.LIGHTNESS, Role.A, Role.B),
    /** OKLab in polar form: L 0 to 1, chroma, hue in degrees. */
    OKLCH(Role.LIGHTNESS, Role.COLOURFULNESS, Role.HUE);

    /**
     * The meaning of a coordinate; a coordinate of one space is analogous to the one with the same role in another. Source: "Interpolating
     * with Missing Components".
     */
    enum Role {
        RED,
        GREEN,
        BLUE,
        LIGHTNESS,
        COLOURFULNESS,
        HUE,
        A,
        B,
        WHITENESS,
        BLACKNESS
    }

    private final Role first;
    private final Role second;
    private final Role third;

    Space(Role first, Role second, Role third) {
        this.first = first;
        this.second = second;
        this.third = third;
    }

    /**
     * The meaning of the coordinates.
     *
     * @return three roles, in the order in which the coordinates are written
     */
    List<Role> roles() {
        return List.of(first, second, third);
    }
}
