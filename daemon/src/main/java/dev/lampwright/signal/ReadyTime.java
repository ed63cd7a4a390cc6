package dev.lampwright.signal;

/** When a heater will be ready, by a first-order response fitted to its readings. Allocates nothing. */
final class ReadyTime {
    /** A heater is ready from so far below its target on, in K, as for the guess at the state. Common practice, no source. */
    static final double WITHIN_K = 2;

    /** And it stays so until it has sunk so far below, in K. */
    private static final double SUNK_K = 5;
    /** At the start heat has not reached the sensor; no fit is made of readings that have not risen so far, in K. */
    private static final double LAG_K = 1.5;

    /** Nor of those that have not risen by this share of the way. */
    private static final double LAG_SHARE = 0.04;
    /** Of the rest the oldest share is left out: the newest tells most of what is to come. */
    private static final double OLD_SHARE = 0.2;
    /** Longer than this is unknown, in s. */
    private static final double LONGEST_S = 4 * 3600.0;
    /** An estimate counts if its standard error is below this share of it and {@link #ERROR_S}. */
    private static final double ERROR_SHARE = 0.35;

    private static final double ERROR_S = 4;
    /** Once there has been one, those with so many times that error count too. */
    private static final double PATIENCE = 3;

    private final double roomC;
    private final Samples samples = new Samples();
    private final HeatFit fit = new HeatFit();
    private final Habit habit;
    private final Arrival arrival = new Arrival();
    private double target = Double.NaN;
    private boolean isReady;

    /**
     * Makes one that has heard nothing.
     *
     * @param roomC temperature of the room; a target at or below it is off
     */
    ReadyTime(double roomC) {
        this.roomC = roomC;
        habit = new Habit(roomC);
    }

    /**
     * Takes a pair of readings.
     *
     * @param actualC temperature now; NaN if unknown
     * @param targetC temperature to reach; NaN if unknown
     * @param now when the newer of them came, in s, no earlier than those before
     * @param isMeasured whether that is the temperature
     * @return when the heater is ready, in s on the same clock: now, if it is; NaN if nothing heats or there is not enough to tell
     */
    double take(double actualC, double targetC, double now, boolean isMeasured) {
        if (Double.isNaN(actualC) || Double.isNaN(targetC) || targetC <= roomC) {
            forget();
            return Double.NaN;
        }
        if (targetC != target) {
            target = targetC;
            arrival.forget();
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
        }
        return arrival.take(estimate(), now);
    }

    private void forget() {
        habit.forget();
        samples.clear();
        arrival.forget();
        isReady = false;
    }

    private double estimate() {
        int from = firstUseful();
        int last = samples.size() - 1;
        if (from >= last) {
            return Double.NaN;
        }
        double goal = target - WITHIN_K;
        double slope = (samples.value(last) - samples.value(from)) / (samples.time(last) - samples.time(from));
        double rate = habit.rate(slope, samples.value(last), goal);
        if (!(rate > 0)) {
            return Double.NaN;
        }
        fit.fit(samples, from, goal, rate, habit.within() * rate);
        habit.note(fit, (target - samples.value(last)) / (target - samples.value(0)));
        return isTrusted() ? samples.time(last) + fit.secondsLeft() : Double.NaN;
    }

    private boolean isTrusted() {
        double most = (ERROR_S + ERROR_SHARE * fit.secondsLeft()) * (arrival.isKnown() ? PATIENCE : 1);
        return fit.secondsLeft() <= LONGEST_S && fit.errorS() <= most;
    }

    private int firstUseful() {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < samples.size(); i++) {
            lowest = Math.min(lowest, samples.value(i));
        }
        double risen = lowest + Math.max(LAG_K, LAG_SHARE * (target - lowest));
        int from = samples.size();
        while (from > 0 && samples.value(from - 1) > risen) {
            from--;
        }
        return from + (int) (OLD_SHARE * (samples.size() - from));
    }

    /**
     * How far off the time may be.
     *
     * @return standard error in s, as the scatter of the readings has it; 0 if the heater is ready; NaN if the time is unknown
     */
    double errorS() {
        if (isReady) {
            return 0;
        }
        return arrival.isKnown() ? fit.errorS() : Double.NaN;
    }
}
