package dev.lampwright.signal;

/**
 * A first-order response fitted to the readings of a heat-up, and how long it takes to reach a goal.
 *
 * <p>At constant power a heated body follows dT/dt = (T∞ − T) ÷ τ. With u = T − goal, a = (T∞ − goal) ÷ τ and b = 1 ÷ τ that is du/dt =
 * a − b·u; and integrated, with time counted from the newest reading back, u(t) = c + a·t − b·∫u dt. This is linear in c, a and b, so
 * they are found by least squares. An integral, unlike a derivative, does not magnify noise.
 *
 * <p>Early on a heat-up is nearly straight and says little of b. So b is drawn towards what is known of the heater beforehand.
 */
final class HeatFit {
    /** The least samples that three numbers are drawn from. */
    static final int LEAST_SAMPLES = 5;

    /** Readings are not trusted beyond this, in K: they are rounded, and no heater is quite of first order. Common practice, no source. */
    private static final double LEAST_SCATTER_K = 0.15;
    /** A goal is set because the heater gets there: so much of the slope is taken to be left there at least. */
    private static final double LEAST_SLOPE_LEFT = 0.04;

    private final GuidedLeastSquares squares = new GuidedLeastSquares();
    private double secondsLeft = Double.NaN;
    private double errorS = Double.NaN;
    private double rate = Double.NaN;
    private double rateError = Double.NaN;

    /**
     * Fits.
     *
     * @param samples temperatures over time, in °C and s
     * @param from the first that is used
     * @param goalC temperature to be reached
     * @param knownRate what is known beforehand of 1 ÷ τ, in 1/s
     * @param knownWithin standard error of that, above 0
     */
    void fit(Samples samples, int from, double goalC, double knownRate, double knownWithin) {
        secondsLeft = Double.NaN;
        errorS = Double.NaN;
        rate = Double.NaN;
        rateError = Double.NaN;
        if (samples.size() - from < LEAST_SAMPLES) {
            return;
        }
        double span = samples.time(samples.size() - 1) - samples.time(from);
        gather(samples, from, goalC, span);
        if (squares.solve(LEAST_SCATTER_K, knownRate * span, knownWithin * span)) {
            rate = Math.max(0, squares.b() / span);
            rateError = squares.error(0, 0, 1) / span;
            reach(squares.c(), squares.a() / span, span);
        }
    }

    /** Gives the points to least squares, in units of the time that is spanned. */
    private void gather(Samples samples, int from, double goalC, double span) {
        squares.clear();
        int last = samples.size() - 1;
        double laterU = samples.value(last) - goalC;
        double laterT = 0;
        double integral = 0;
        for (int i = last; i >= from; i--) {
            double u = samples.value(i) - goalC;
            double t = (samples.time(i) - samples.time(last)) / span;
            integral -= (laterT - t) * (u + laterU) / 2;
            squares.add(t, -integral, u);
            laterU = u;
            laterT = t;
        }
    }

    private void reach(double u, double slopeAtGoal, double span) {
        double slopeNow = slopeAtGoal - rate * u;
        if (u < 0 && slopeNow > 0) {
            double slope = Math.max(slopeAtGoal, LEAST_SLOPE_LEFT * slopeNow);
            secondsLeft = FirstOrder.timeToGoal(u, slope, rate);
            errorS = squares.error(
                    FirstOrder.byU(u, slope, rate),
                    FirstOrder.bySlope(u, slope, rate) / span,
                    FirstOrder.byRate(u, slope, rate) / span);
        }
    }

    /**
     * How long it takes from the newest sample to the goal.
     *
     * @return s, above 0; NaN if the samples do not say
     */
    double secondsLeft() {
        return secondsLeft;
    }

    /**
     * How far off that may be.
     *
     * @return standard error in s, as the scatter of the samples has it; NaN if {@link #secondsLeft} is
     */
    double errorS() {
        return errorS;
    }

    /**
     * What was found of 1 ÷ τ.
     *
     * @return 1/s, 0 or more; NaN if the samples do not say
     */
    double rate() {
        return rate;
    }

    /**
     * How far off that may be.
     *
     * @return standard error in 1/s; NaN if {@link #rate} is
     */
    double rateError() {
        return rateError;
    }
}
