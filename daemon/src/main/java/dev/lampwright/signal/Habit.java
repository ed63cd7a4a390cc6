package dev.lampwright.signal;

/**
 * What is known of a heater before a heat-up has shown it: at first what is usual, then what the heat-up before has shown.
 */
final class Habit {
    /**
     * How many times as far above the room as a goal a heater's final temperature usually is. Common practice, no source: heaters
     * are sized for their highest temperatures, so usual goals take about half of it.
     */
    private static final double USUAL_REACH = 2;

    /** Share by which what is usual may be off. */
    private static final double USUAL_WITHIN = 1;
    /** Share by which a heater may differ from one heat-up to the next. */
    private static final double LEARNT_WITHIN = 0.15;
    /** What a heat-up has shown is kept if its standard error is below this share of it. */
    private static final double SHOWN_WITHIN = 0.25;
    /** Nearer to its goal than this share of the way, a heater may be throttled, which tells nothing of its rate. */
    private static final double THROTTLED_SHARE = 0.15;

    private final double roomC;
    private double learnt = Double.NaN;
    private double shown = Double.NaN;

    /**
     * Makes that of a heater of which nothing is known.
     *
     * @param roomC temperature of the room
     */
    Habit(double roomC) {
        this.roomC = roomC;
    }

    /**
     * What to expect of the rate 1 ÷ τ.
     *
     * @param slope how fast it heats, in K/s
     * @param actualC temperature now, below the goal
     * @param goalC temperature to be reached, above that of the room
     * @return 1/s
     */
    double rate(double slope, double actualC, double goalC) {
        double finalC = roomC + USUAL_REACH * (goalC - roomC);
        return Double.isNaN(learnt) ? slope / (finalC - actualC) : learnt;
    }

    /**
     * How far off that may be.
     *
     * @return share of it, as a standard error
     */
    double within() {
        return Double.isNaN(learnt) ? USUAL_WITHIN : LEARNT_WITHIN;
    }

    /**
     * Notes what a heat-up that is under way has shown so far.
     *
     * @param fit what was fitted to it
     * @param wayLeft share of the way that is left, 0 to 1
     */
    void note(HeatFit fit, double wayLeft) {
        if (wayLeft > THROTTLED_SHARE && fit.rateError() < SHOWN_WITHIN * fit.rate()) {
            shown = fit.rate();
        }
    }

    /** The heat-up has reached its goal, so what it has shown is expected of the next one. */
    void learn() {
        if (!Double.isNaN(shown)) {
            learnt = shown;
        }
        forget();
    }

    /** The heat-up has been given up; what it has shown does not count. */
    void forget() {
        shown = Double.NaN;
    }
}
