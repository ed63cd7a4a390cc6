package dev.lampwright.signal;

/**
 * A first-order response on its way to a goal: u, how far it is above the goal, follows du/dt = slope − rate·u, where slope is that at the
 * goal. It passes the goal after ln(1 − rate·u ÷ slope) ÷ rate. In terms of a final value F and a time constant τ that is the
 * well-known τ·ln((F − now) ÷ (F − goal)).
 */
final class FirstOrder {
    /** Below this the logarithm is a straight line to nine digits. */
    private static final double STRAIGHT = 1e-6;

    private FirstOrder() {}

    /**
     * How long it takes to the goal.
     *
     * @param u how far above the goal it is now, below 0
     * @param slope its slope at the goal, above 0
     * @param rate 1 ÷ τ, 0 or more
     * @return in the unit of time of slope and rate, above 0
     */
    static double timeToGoal(double u, double slope, double rate) {
        double bend = -rate * u / slope;
        return bend < STRAIGHT ? -u / slope : Math.log1p(bend) / rate;
    }

    /**
     * The derivative of that time by u.
     *
     * @return below 0
     */
    static double byU(double u, double slope, double rate) {
        return -1 / (slope - rate * u);
    }

    /**
     * The derivative of that time by the slope.
     *
     * @return below 0
     */
    static double bySlope(double u, double slope, double rate) {
        return u / (slope * (slope - rate * u));
    }

    /**
     * The derivative of that time by the rate.
     *
     * @return below 0
     */
    static double byRate(double u, double slope, double rate) {
        double bend = -rate * u / slope;
        return bend < STRAIGHT
                ? -u * u / (2 * slope * slope)
                : -(timeToGoal(u, slope, rate) + u / (slope - rate * u)) / rate;
    }
}
