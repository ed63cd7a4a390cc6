package dev.lampwright.colour;

/**
 * OKLab in polar form.
 *
 * @param lightness 0 to 1
 * @param chroma 0 to about 0.4, never negative
 * @param hue in degrees, from red towards yellow; any number of turns
 */
record Oklch(double lightness, double chroma, double hue) {
    /** Up to this chroma the hue is meaningless. Source: CSS Color Module Level 4, "Specifying Oklab and OkLCh". */
    static final double POWERLESS_BELOW = 0.000004;

    static Oklch of(Oklab lab) {
        double hue = Math.toDegrees(Math.atan2(lab.b(), lab.a()));
        return new Oklch(lab.lightness(), Math.hypot(lab.a(), lab.b()), hue < 0 ? hue + 360 : hue);
    }

    Oklch withChroma(double other) {
        return new Oklch(lightness, other, hue);
    }

    Oklab oklab() {
        double angle = Math.toRadians(hue);
        return new Oklab(lightness, chroma * Math.cos(angle), chroma * Math.sin(angle));
    }
}
