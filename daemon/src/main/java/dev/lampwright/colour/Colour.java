package dev.lampwright.colour;

import java.util.List;
import java.util.Objects;

/**
 * A colour as written: in its own space, with missing components ({@code none}), with its alpha, and not yet mapped to what can be shown.
 * Gradients need all of that; everything else uses its {@link #light()}.
 */
public final class Colour {
    private static final int COORDINATES = 3;

    private final Space space;
    private final Triple coordinates;
    private final double alpha;

    /**
     * Creates a colour.
     *
     * @param space the space
     * @param coordinates in that space; NaN where missing
     * @param alpha 0 to 1; NaN if missing
     */
    Colour(Space space, Triple coordinates, double alpha) {
        this.space = space;
        this.coordinates = coordinates;
        this.alpha = alpha;
    }

    /**
     * An opaque colour.
     *
     * @param light the light
     * @return the colour
     */
    public static Colour of(Light light) {
        return new Colour(Space.SRGB_LINEAR, Rgb.of(light).numbers(), 1);
    }

    /**
     * The light, mapped to what can be shown. Missing components count as 0.
     *
     * @return the light, not multiplied with alpha
     */
    public Light light() {
        Rgb rgb = rgb();
        return rgb.inGamut() ? rgb.light() : GamutMap.light(Oklab.of(rgb));
    }

    /**
     * How much of what is below is covered.
     *
     * @return 0 to 1; 0 if it is missing
     */
    public double alpha() {
        return present(alpha);
    }

    Rgb rgb() {
        return Conversions.rgb(space, coordinates.each(Colour::present));
    }

    /**
     * The colour in the space of an interpolation. Source: CSS Color Module Level 4, "Color Interpolation" and "Interpolating with Missing
     * Components": missing components are carried over to analogous ones, powerless components count as missing.
     *
     * @param polar whether the space is OKLCH; otherwise OKLab
     * @return three coordinates and alpha; NaN where missing
     */
    double[] forMixing(boolean polar) {
        Space target = polar ? Space.OKLCH : Space.OKLAB;
        double[] mixed = space == target ? written() : converted(polar);
        if (polar && mixed[1] <= Oklch.POWERLESS_BELOW) {
            mixed[2] = Double.NaN;
        }
        if (space != target) {
            carryMissing(target, mixed);
        }
        return mixed;
    }

    private double[] written() {
        return new double[] {coordinates.first(), coordinates.second(), coordinates.third(), alpha};
    }

    private double[] converted(boolean polar) {
        Oklab lab = Oklab.of(rgb());
        if (!polar) {
            return new double[] {lab.lightness(), lab.a(), lab.b(), alpha};
        }
        Oklch lch = Oklch.of(lab);
        return new double[] {lch.lightness(), lch.chroma(), lch.hue(), alpha};
    }

    /** Coordinates with a counterpart are carried one by one; those without only if all of them are missing. */
    private void carryMissing(Space target, double[] mixed) {
        List<Space.Role> here = space.roles();
        List<Space.Role> there = target.roles();
        double[] mine = written();
        boolean restMissing = true;
        for (int i = 0; i < COORDINATES; i++) {
            int counterpart = there.indexOf(here.get(i));
            boolean missing = Double.isNaN(mine[i]);
            if (counterpart < 0) {
                restMissing &= missing;
            } else if (missing) {
                mixed[counterpart] = Double.NaN;
            }
        }
        for (int i = 0; restMissing && i < COORDINATES; i++) {
            if (!here.contains(there.get(i))) {
                mixed[i] = Double.NaN;
            }
        }
    }

    /** As written: the same light in another space is a different colour, because gradients take a different path from it. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Colour colour
                && space == colour.space
                && coordinates.equals(colour.coordinates)
                && Double.compare(alpha, colour.alpha) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(space, coordinates, alpha);
    }

    private static double present(double value) {
        return Double.isNaN(value) ? 0 : value;
    }
}
