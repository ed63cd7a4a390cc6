package dev.lampwright.colour;

/**
 * All the colours on the way from one to another. Source: CSS Color Module Level 4, "Color Interpolation" with missing components,
 * alpha and hue.
 */
final class Mix {
    private static final int HUE = 2;
    private static final int ALPHA = 3;

    private final boolean polar;
    private final double[] from;
    private final double[] to;
    private final double turn;

    /**
     * Creates a mix.
     *
     * @param from where it starts
     * @param to where it ends
     * @param way how to get there
     */
    Mix(Colour from, Colour to, Interpolation way) {
        polar = way.polar();
        this.from = from.forMixing(polar);
        this.to = to.forMixing(polar);
        boolean hueless = Double.isNaN(this.from[HUE]) && Double.isNaN(this.to[HUE]);
        for (int i = 0; i <= ALPHA; i++) {
            fillMissing(i);
        }
        turn = hueless ? 0 : way.turn(this.from[HUE], this.to[HUE]);
    }

    /** A component missing in one is taken from the other. If alpha is missing in both, the colour is transparent. */
    private void fillMissing(int i) {
        if (Double.isNaN(from[i])) {
            from[i] = Double.isNaN(to[i]) ? 0 : to[i];
        }
        if (Double.isNaN(to[i])) {
            to[i] = from[i];
        }
    }

    /**
     * Alpha on the way.
     *
     * @param share how far, 0 to 1
     * @return 0 to 1
     */
    double alpha(double share) {
        return between(from[ALPHA], to[ALPHA], share);
    }

    /**
     * The colour on the way.
     *
     * @param share how far, 0 to 1
     * @return the colour, not multiplied with alpha, not mapped to what can be shown
     */
    Oklab colour(double share) {
        double lightness = covered(0, share);
        double second = covered(1, share);
        if (polar) {
            return new Oklch(lightness, second, from[HUE] + turn * share).oklab();
        }
        return new Oklab(lightness, second, covered(HUE, share));
    }

    /** A coordinate, interpolated premultiplied with alpha, and divided by it again. */
    private double covered(int i, double share) {
        double multiplied = between(from[i] * from[ALPHA], to[i] * to[ALPHA], share);
        double alpha = alpha(share);
        return alpha == 0 ? multiplied : multiplied / alpha;
    }

    private static double between(double from, double to, double share) {
        return from + (to - from) * share;
    }
}
