package dev.lampwright.look;

/** A soft step from 0 to 1, averaged over a pixel. */
final class Edge {
    private Edge() {}

    /**
     * How much of a pixel lies beyond an edge.
     *
     * @param pixel the pixel, which extends from this to the next whole number
     * @param edge where the step is, in pixels
     * @param softness width over which it rises evenly, in pixels, 0 or more
     * @return 0 where the pixel lies before the edge, 1 where it lies behind
     */
    static double share(int pixel, double edge, double softness) {
        double half = Math.max(softness, 1e-9) / 2;
        return risen(pixel + 1 - edge, half) - risen(pixel - edge, half);
    }

    /**
     * The first pixel that lies at least partly beyond an edge.
     *
     * @param edge where the step is, in pixels; NaN counts as 0
     * @param softness width over which it rises evenly, in pixels, 0 or more
     * @param pixels length of the zone
     * @return 0 to {@code pixels}; {@link #share} is 0 for all before it
     */
    static int from(double edge, double softness, int pixels) {
        return (int) Math.max(0, Math.min(pixels, Math.floor(edge - softness / 2)));
    }

    /**
     * The first pixel that lies wholly beyond an edge.
     *
     * @param edge where the step is, in pixels; NaN counts as 0
     * @param softness width over which it rises evenly, in pixels, 0 or more
     * @param pixels length of the zone
     * @return 0 to {@code pixels}; {@link #share} is 1 from there on
     */
    static int to(double edge, double softness, int pixels) {
        return (int) Math.max(0, Math.min(pixels, Math.ceil(edge + softness / 2)));
    }

    /**
     * Converts a share to a cover.
     *
     * @param share 0 to 1, except for rounding
     * @return 0 to 1
     */
    static float cover(double share) {
        return (float) Math.max(0, Math.min(1, share));
    }

    /** The integral of a ramp that rises from 0 at −half to 1 at half. */
    private static double risen(double x, double half) {
        if (x <= -half) {
            return 0;
        }
        return x >= half ? x : (x + half) * (x + half) / (4 * half);
    }
}
