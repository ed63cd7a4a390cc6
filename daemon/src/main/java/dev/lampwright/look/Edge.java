package dev.lampwright.look;

/** A soft step from 0 to 1, averaged over a pixel. */
final class Edge {
    private Edge() {}

    /**
     * How much of a pixel lies beyond an edge.
     *
     * @param pixel the pixel, which reaches from this to the next whole number
     * @param edge where the step stands, in pixels
     * @param softness width over which it rises evenly, in pixels, 0 or more
     * @return 0 where the pixel lies before the edge, 1 where it lies behind
     */
    static double share(int pixel, double edge, double softness) {
        double half = Math.max(softness, 1e-9) / 2;
        return risen(pixel + 1 - edge, half) - risen(pixel - edge, half);
    }

    /**
     * Makes a share a cover.
     *
     * @param share 0 to 1, but for rounding
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
