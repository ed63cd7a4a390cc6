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
     * The first pixel of which some lies beyond an edge.
     *
     * @param edge where the step stands, in pixels; NaN counts as 0
     * @param softness width over which it rises evenly, in pixels, 0 or more
     * @param pixels length of the zone
     * @return 0 to {@code pixels}; {@link #share} of all before it is 0
     */
    static int from(double edge, double softness, int pixels) {
        return (int) Math.max(0, Math.min(pixels, Math.floor(edge - softness / 2)));
    }

    /**
     * The first pixel that lies beyond an edge wholly.
     *
     * @param edge where the step stands, in pixels; NaN counts as 0
     * @param softness width over which it rises evenly, in pixels, 0 or more
     * @param pixels length of the zone
     * @return 0 to {@code pixels}; {@link #share} from it on is 1
     */
    static int to(double edge, double softness, int pixels) {
        return (int) Math.max(0, Math.min(pixels, Math.ceil(edge + softness / 2)));
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
