package dev.lampwright.signal;

/**
 * When something will be over, from successive estimates. It follows them more slowly the further off the end is, so that the time left
 * does not jump, and continues for a while without them.
 */
final class Arrival {
    /** It moves two thirds of the way to a new estimate in this share of the remaining time. */
    private static final double SLOWNESS = 0.1;

    /** But it takes no longer than this many s plus a share of the time since the first estimate, as the first estimates are the worst. */
    private static final double FIRST_SLOWNESS_S = 8;

    private static final double FORGETS = 0.1;

    private static final double LEAST_SLOWNESS_S = 2;
    private static final double GOES_ON_S = 20;

    private double end = Double.NaN;
    private double begun;
    private double estimatedAt;
    private double heardAt;

    /** The end is unknown. */
    void forget() {
        end = Double.NaN;
    }

    /**
     * Adds an estimate.
     *
     * @param estimate of the end, in s; NaN if there is none
     * @param now in s on the same clock, no earlier than the previous one
     * @return the end, no earlier than now; NaN if unknown
     */
    double take(double estimate, double now) {
        if (Double.isNaN(estimate)) {
            end = now - estimatedAt > GOES_ON_S ? Double.NaN : end;
        } else {
            begun = Double.isNaN(end) ? now : begun;
            end = Double.isNaN(end) ? estimate : end + (estimate - end) * share(now);
            estimatedAt = now;
        }
        heardAt = now;
        return Double.isNaN(end) ? end : Math.max(end, now);
    }

    private double share(double now) {
        double slowness = Math.min(SLOWNESS * (end - now), FIRST_SLOWNESS_S + FORGETS * (now - begun));
        return -Math.expm1((heardAt - now) / Math.max(LEAST_SLOWNESS_S, slowness));
    }

    /**
     * The end as last reported.
     *
     * @return s; NaN if unknown
     */
    double endS() {
        return end;
    }

    /**
     * Whether the end is known.
     *
     * @return false until there is an estimate
     */
    boolean isKnown() {
        return !Double.isNaN(end);
    }
}
