package dev.lampwright.signal;

/** A straight line through samples, by least squares. */
final class StraightLine {
    private double slope = Double.NaN;
    private double meanTime;
    private double meanValue;

    /**
     * Lays the line.
     *
     * @param samples values over time
     * @param from the first that is used; at least two are
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
