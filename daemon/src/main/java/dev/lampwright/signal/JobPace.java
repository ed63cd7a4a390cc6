package dev.lampwright.signal;

/** The pace of a job, and when it will be done, derived from its progress. Allocates nothing. */
final class JobPace {
    /** How much of the job must have been seen before its pace is given. Common practice, no source. */
    private static final double LEAST_SHARE = 0.02;

    private static final double LEAST_S = 60;
    private static final int LEAST_SAMPLES = 5;
    /** The oldest part of what was seen is left out: the beginning of a job says little about the rest. */
    private static final double OLD_SHARE = 0.3;
    /** A fall in progress by more than this means another job. */
    private static final double ANOTHER_JOB = 0.005;

    /** A straight line through samples, by least squares. */
    private static final class StraightLine {
        private double slope = Double.NaN;
        private double meanTime;
        private double meanValue;

        /**
         * Fits the line.
         *
         * @param samples values over time
         * @param from the first that is used; at least two must be
         */
        void fit(Samples samples, int from) {
            int count = samples.size() - from;
            meanTime = 0;
            meanValue = 0;
            for (int i = from; i < samples.size(); i++) {
                meanTime += samples.time(i) / count;
                meanValue += samples.value(i) / count;
            }
            double sumTt = 0;
            double sumTv = 0;
            for (int i = from; i < samples.size(); i++) {
                double t = samples.time(i) - meanTime;
                sumTt += t * t;
                sumTv += t * (samples.value(i) - meanValue);
            }
            slope = sumTv / sumTt;
        }

        /**
         * Its slope.
         *
         * @return units of the values per second
         */
        double slope() {
            return slope;
        }

        /**
         * When it reaches a value.
         *
         * @param value which
         * @return s on the clock of the samples; NaN if the line is level
         */
        double timeOf(double value) {
            return slope == 0 ? Double.NaN : meanTime + (value - meanValue) / slope;
        }
    }

    private final Samples samples = new Samples();
    private final StraightLine line = new StraightLine();
    private final Arrival arrival = new Arrival();
    private double highest;

    /** Call this when the job is over, or another one begins. */
    void forget() {
        samples.clear();
        arrival.forget();
        highest = 0;
    }

    /**
     * Adds the progress of the job.
     *
     * @param progress completed share, 0 to 1; NaN if unknown
     * @param now in s on a clock that runs while the job does
     * @return when it will be done, in s on the same clock; NaN if there is not enough data
     */
    double take(double progress, double now) {
        if (Double.isNaN(progress) || progress < highest - ANOTHER_JOB) {
            forget();
        }
        if (Double.isNaN(progress)) {
            return Double.NaN;
        }
        highest = Math.max(highest, progress);
        samples.add(now, progress);
        if (progress >= 1) {
            arrival.forget();
            return now;
        }
        return arrival.take(isEnough() ? fitted() : Double.NaN, now);
    }

    private boolean isEnough() {
        int last = samples.size() - 1;
        return samples.size() >= LEAST_SAMPLES
                && samples.time(last) - samples.time(0) >= LEAST_S
                && samples.value(last) - samples.value(0) >= LEAST_SHARE;
    }

    private double fitted() {
        line.fit(samples, (int) (OLD_SHARE * samples.size()));
        return line.slope() > 0 ? line.timeOf(1) : Double.NaN;
    }

    /**
     * Its pace.
     *
     * @return share of the job per hour of running time; NaN if there is not enough data
     */
    double perHour() {
        return isEnough() ? 3600 * line.slope() : Double.NaN;
    }
}
