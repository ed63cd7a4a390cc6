package dev.lampwright.signal;

/**
 * What is known about a heater before a heat-up shows it: at first what is usual, then what the previous heat-up has shown about its rate,
 * 1 ÷ τ, and of the band in which it is throttled.
 */
final class Habit implements CurveFit.Expectation {
    /**
     * The usual ratio of a heater's final temperature to its target, both above room temperature. Common practice, no source: heaters are
     * sized for their highest temperatures, so usual targets need about half of that.
     */
    private static final double USUAL_REACH = Math.log(1.9);

    /** Standard deviation of its logarithm. */
    private static final double REACH_WITHIN = 0.55;
    /** The likelihood of a heater that does not reach its target, compared with one that does. */
    private static final double NEVER = 0.05;
    /** Share of heaters that are not throttled. Common practice, no source, as for the band. */
    private static final double NO_BAND = 0.3;
    /** The band of the others, in K, and the standard deviation of its logarithm. */
    private static final double USUAL_BAND = Math.log(8);

    private static final double BAND_WITHIN = 0.8;
    /** How much a heater's rate may differ from one heat-up to the next, as standard deviation of its logarithm. */
    private static final double RATE_CHANGES = 0.1;
    /** The same for its band, in K and as a share of it. */
    private static final double BAND_CHANGES_K = 1.5;

    private static final double BAND_CHANGES = 0.2;
    /** However far a curve is from what was shown, it still counts this much: the heater may have been changed. */
    private static final double ANOTHER = 1e-4;

    private final double roomC;
    private final double[] usual = new double[HeatingCurves.count()];
    private final Shown shown = new Shown();
    private final Shown learnt = new Shown();
    private double startC = Double.NaN;
    private double targetC = Double.NaN;

    /** What a heat-up has shown, each with its standard deviation. */
    private static final class Shown {
        private double logRate = Double.NaN;
        private double logRateWithin;
        private double bandK;
        private double bandWithinK;

        void take(Shown other) {
            logRate = other.logRate;
            logRateWithin = other.logRateWithin;
            bandK = other.bandK;
            bandWithinK = other.bandWithinK;
        }
    }

    /**
     * Creates one for an unknown heater.
     *
     * @param roomC temperature of the room
     */
    Habit(double roomC) {
        this.roomC = roomC;
    }

    /**
     * Announces the next heat-up.
     *
     * @param newStartC where it began, in °C
     * @param newTargetC its target, above that and above room temperature
     */
    void expect(double newStartC, double newTargetC) {
        if (newStartC == startC && newTargetC == targetC) {
            return;
        }
        startC = newStartC;
        targetC = newTargetC;
        for (int i = 0; i < usual.length; i++) {
            HeatingCurves.Curve curve = HeatingCurves.curve(i);
            usual[i] = curve.stands() * usualReach(curve.reach()) * usualBand(curve.band());
        }
    }

    private double usualReach(double reach) {
        double beyondRoom = (startC + reach * (targetC - startC) - roomC) / (targetC - roomC);
        double likely = beyondRoom > 0 ? bell(Math.log(beyondRoom) - USUAL_REACH, REACH_WITHIN) : 0;
        return reach > 1 ? likely : NEVER * likely;
    }

    private double usualBand(double band) {
        if (band == HeatingCurves.NO_BAND) {
            return NO_BAND;
        }
        double density = bell(Math.log(band * (targetC - startC)) - USUAL_BAND, BAND_WITHIN);
        return (1 - NO_BAND) * density * HeatingCurves.BAND_STEP / (BAND_WITHIN * Math.sqrt(2 * Math.PI));
    }

    private static double bell(double off, double within) {
        return Math.exp(-off * off / (2 * within * within));
    }

    @Override
    public double of(int curve, double unitS) {
        return usual[curve] * (Double.isNaN(learnt.logRate) ? 1 : known(HeatingCurves.curve(curve), unitS));
    }

    private double known(HeatingCurves.Curve curve, double unitS) {
        double rateOff = logRate(curve, unitS) - learnt.logRate;
        double bandOff = curve.band() * (targetC - startC) - learnt.bandK;
        return ANOTHER
                + bell(rateOff, Math.hypot(RATE_CHANGES, learnt.logRateWithin))
                        * bell(bandOff, Math.hypot(BAND_CHANGES_K + BAND_CHANGES * learnt.bandK, learnt.bandWithinK));
    }

    private static double logRate(HeatingCurves.Curve curve, double unitS) {
        return -Math.log(curve.reach() * unitS);
    }

    /**
     * Records what the current heat-up has shown so far.
     *
     * @param fit what was fitted to it
     */
    void note(CurveFit fit) {
        double rate = 0;
        double rates = 0;
        double band = 0;
        double bands = 0;
        for (int i = 0; i < usual.length; i++) {
            double weight = fit.weight(i);
            if (weight > 0) {
                HeatingCurves.Curve curve = HeatingCurves.curve(i);
                double logRate = logRate(curve, fit.unitS(i));
                double bandK = curve.band() * (targetC - startC);
                rate += weight * logRate;
                rates += weight * logRate * logRate;
                band += weight * bandK;
                bands += weight * bandK * bandK;
            }
        }
        shown.logRate = rate;
        shown.logRateWithin = Math.sqrt(Math.max(0, rates - rate * rate));
        shown.bandK = band;
        shown.bandWithinK = Math.sqrt(Math.max(0, bands - band * band));
    }

    /** Called when the heat-up has reached its goal: what it has shown is expected of the next one. */
    void learn() {
        if (!Double.isNaN(shown.logRate)) {
            learnt.take(shown);
        }
        forget();
    }

    /** Called when the heat-up has been abandoned: what it has shown does not count. */
    void forget() {
        shown.logRate = Double.NaN;
    }
}
