package dev.lampwright.colour;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A colour function of CSS, and how its values are written. Source: CSS Color Module Level 4, the tables of percent reference ranges.
 *
 * @param space the space of its values
 * @param channels how each of the three is written
 * @param hasCommas whether the older notation with commas is allowed
 * @param example how to write it well
 */
record Notation(Space space, List<Channel> channels, boolean hasCommas, String example) {
    private static final Channel EIGHT_BIT = new Channel(1 / 255.0, 0.01, 0, 1);
    private static final Channel UNIT = Channel.open(1, 0.01);
    private static final Channel HUNDRED = Channel.open(1, 1);
    private static final Channel SATURATION = new Channel(1, 1, 0, Double.POSITIVE_INFINITY);
    private static final Channel LIGHTNESS = new Channel(1, 1, 0, 100);
    private static final Channel CHROMA = new Channel(1, 1.5, 0, Double.POSITIVE_INFINITY);
    private static final Channel OPPONENT = Channel.open(1, 1.25);
    private static final Channel OK_LIGHTNESS = new Channel(1, 0.01, 0, 1);
    private static final Channel OK_CHROMA = new Channel(1, 0.004, 0, Double.POSITIVE_INFINITY);
    private static final Channel OK_OPPONENT = Channel.open(1, 0.004);

    private static final Notation RGB =
            new Notation(Space.SRGB, List.of(EIGHT_BIT, EIGHT_BIT, EIGHT_BIT), true, "rgb(255 128 0)");
    private static final Notation HSL =
            new Notation(Space.HSL, List.of(Channel.HUE, SATURATION, HUNDRED), true, "hsl(30 100% 50%)");
    private static final Notation HWB = spaced(Space.HWB, Channel.HUE, HUNDRED, HUNDRED, "hwb(30 0% 0%)");
    private static final Notation LAB = spaced(Space.LAB, LIGHTNESS, OPPONENT, OPPONENT, "lab(70% 40 75)");
    private static final Notation LCH = spaced(Space.LCH, LIGHTNESS, CHROMA, Channel.HUE, "lch(70% 85 62)");
    private static final Notation OKLAB =
            spaced(Space.OKLAB, OK_LIGHTNESS, OK_OPPONENT, OK_OPPONENT, "oklab(75% 0.1 0.15)");
    private static final Notation OKLCH =
            spaced(Space.OKLCH, OK_LIGHTNESS, OK_CHROMA, Channel.HUE, "oklch(70% 0.15 50)");

    private static final Map<String, Notation> FUNCTIONS = Map.of(
            "rgb", RGB, "rgba", RGB, "hsl", HSL, "hsla", HSL, "hwb", HWB, "lab", LAB, "lch", LCH, "oklab", OKLAB,
            "oklch", OKLCH);

    private static final Map<String, Space> COLOR_SPACES = Map.of(
            "srgb", Space.SRGB,
            "srgb-linear", Space.SRGB_LINEAR,
            "display-p3", Space.DISPLAY_P3,
            "xyz", Space.XYZ_D65,
            "xyz-d65", Space.XYZ_D65,
            "xyz-d50", Space.XYZ_D50);

    /**
     * Finds a function that is named after its space.
     *
     * @param name in lower case
     * @return the function, if there is one
     */
    static Optional<Notation> function(String name) {
        return Optional.ofNullable(FUNCTIONS.get(name));
    }

    /**
     * Finds a space of the function {@code color()}.
     *
     * @param name in lower case
     * @return what may follow the name, if there is such a space
     */
    static Optional<Notation> color(String name) {
        return Optional.ofNullable(COLOR_SPACES.get(name))
                .map(space -> spaced(space, UNIT, UNIT, UNIT, "color(" + name + " 1 0.5 0)"));
    }

    private static Notation spaced(Space space, Channel first, Channel second, Channel third, String example) {
        return new Notation(space, List.of(first, second, third), false, example);
    }
}
