package dev.lampwright.signal;

/** When a heater will be ready, according to the {@link HeatingCurves} that its readings allow. Allocates nothing. */
final class ReadyTime {
    /** A heater is ready from this far below its target, in K, the same as in the state guess. Common practice, no source. */
    static final double WITHIN_K = 2;

    /** It stays ready until it has fallen this far below, in K. */
    private static final double SUNK_K = 5;
    /** At first the heat has not reached the sensor; readings that have not risen this far are not fitted, in K. */
    private static final double LAG_K = 1.5;

    /** Nor are readings that have not risen by this share of the way. */
    private static final double LAG_SHARE = 0.04;
    /** A longer time counts as unknown, in s. */
    private static final double LONGEST_S = 4 * 3600.0;
    /** An estimate counts if its standard error is below this share of it and {@link #ERROR_S}. */
    private static final double ERROR_SHARE = 0.45;

    private static final double ERROR_S = 4;
    /** It does not count if the probability that the heater never gets there exceeds this. */
    private static final double MOST_DOUBT = 0.5;
    /** After the first, estimates with this many times that error count too. */
    private static final double PATIENCE = 3;
    /** The estimate is repeated once this share of the time left has passed, which bounds the work however often readings come. */
    private static final double AGAIN_SHARE = 0.02;

    private static final double AGAIN_S = 0.5;

    private final double roomC;
    private final Samples samples = new Samples();
    private final CurveFit fit;
    private final Habit habit;
    private final Arrival arrival = new Arrival();
    private double target = Double.NaN;
    private double lowest = Double.POSITIVE_INFINITY;
    private double estimated = Double.NaN;
    private double errorS = Double.NaN;
    private double nextAt = Double.NEGATIVE_INFINITY;
    private boolean isReady;

    /**
     * Creates one without readings.
     *
     * @param roomC temperature of the room; a target at or below it is off
     */
    ReadyTime(double roomC) {
        this(roomC, new CurveFit());
    }

    /**
     * Creates one without readings, which calculates together with others on the same thread.
     *
     * @param roomC temperature of the room; a target at or below it is off
     * @param fit for calculating; nothing stays in it
     */
    ReadyTime(double roomC, CurveFit fit) {
        this.roomC = roomC;
        this.fit = fit;
        habit = new Habit(roomC);
    }

    /**
     * Adds a pair of readings.
     *
     * @param actualC temperature now; NaN if unknown
     * @param targetC target temperature; NaN if unknown
     * @param now when the newer of them came, in s, no earlier than those before
     * @param isMeasured whether the newer one is the temperature
     * @return when the heater is ready, in s on the same clock: now, if it is; NaN if nothing heats or there is not enough data
     */
    double take(double actualC, double targetC, double now, boolean isMeasured) {
        if (Double.isNaN(actualC) || Double.isNaN(targetC) || targetC <= roomC) {
            forget();
            return Double.NaN;
        }
        if (targetC != target) {
            target = targetC;
            arrival.forget();
            nextAt = Double.NEGATIVE_INFINITY;
        }
        if (actualC >= target - (isReady ? SUNK_K : WITHIN_K)) {
            habit.learn();
            forget();
            isReady = true;
            return now;
        }
        isReady = false;
        if (isMeasured) {
            samples.add(now, actualC);
            lowest = Math.min(lowest, actualC);
        }
        if (now >= nextAt) {
            estimated = estimate();
            double left = Double.isNaN(estimated) ? 0 : estimated - now;
            nextAt = now + Math.max(AGAIN_S, AGAIN_SHARE * left);
        }
        return arrival.take(estimated, now);
    }

    private void forget() {
        habit.forget();
        samples.clear();
        nextAt = Double.NEGATIVE_INFINITY;
        lowest = Double.POSITIVE_INFINITY;
        arrival.forget();
        isReady = false;
    }

    private double estimate() {
        int from = firstUseful();
        int last = samples.size() - 1;
        if (from >= last) {
            return Double.NaN;
        }
        habit.expect(lowest, target);
        fit.fit(samples, from, lowest, target, target - WITHIN_K, habit);
        if (Double.isNaN(fit.secondsLeft())) {
            return Double.NaN;
        }
        habit.note(fit);
        errorS = fit.errorS();
        return isTrusted() ? samples.time(last) + fit.secondsLeft() : Double.NaN;
    }

    private boolean isTrusted() {
        double most = (ERROR_S + ERROR_SHARE * fit.secondsLeft()) * (arrival.isKnown() ? PATIENCE : 1);
        return fit.never() < MOST_DOUBT && fit.secondsLeft() <= LONGEST_S && fit.errorS() <= most;
    }

    private int firstUseful() {
        double risen = lowest + Math.max(LAG_K, LAG_SHARE * (target - lowest));
        int from = samples.size();
        while (from > 0 && samples.value(from - 1) > risen) {
            from--;
        }
        return from;
    }

    /**
     * The uncertainty of the time.
     *
     * @return standard error in s; it comes less from the scatter of readings than from not knowing which curve the heater follows, and
     *     from the delay with which the reported time follows the newest estimate; 0 if the heater is ready; NaN if the time is unknown
     */
    double errorS() {
        if (isReady) {
            return 0;
        }
        double behind = Double.isNaN(estimated) ? 0 : arrival.endS() - estimated;
        return arrival.isKnown() ? Math.hypot(errorS, behind) : Double.NaN;
    }
}
