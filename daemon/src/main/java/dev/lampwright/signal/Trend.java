package dev.lampwright.signal;

/**
 * How fast a value changes: the slope of a straight line through recent values, by least squares with exponential forgetting. So noise,
 * rounding and uneven messages have little effect.
 */
final class Trend {
    /** Two thirds of the weight are within this, in s. */
    private static final double MEMORY_S = 8;

    private static final int LEAST_VALUES = 3;
    private static final double LEAST_SPREAD_S = 0.5;

    private int values;
    private double base;
    private double lastS;
    private double sumW;
    private double sumT;
    private double sumTt;
    private double sumV;
    private double sumTv;

    /** Forgets everything. */
    void forget() {
        values = 0;
        sumW = 0;
        sumT = 0;
        sumTt = 0;
        sumV = 0;
        sumTv = 0;
    }

    /**
     * Adds a value.
     *
     * @param value the value, known
     * @param timeS when it came, in s, no earlier than the previous one
     */
    void add(double value, double timeS) {
        if (values == 0) {
            base = value;
        } else {
            age(timeS - lastS);
        }
        values++;
        lastS = timeS;
        sumW++;
        sumV += value - base;
    }

    /** Time is counted back from the newest value, so all others become older and lose weight. */
    private void age(double step) {
        double kept = Math.exp(-step / MEMORY_S);
        sumTt = kept * (sumTt - 2 * step * sumT + step * step * sumW);
        sumTv = kept * (sumTv - step * sumV);
        sumT = kept * (sumT - step * sumW);
        sumW *= kept;
        sumV *= kept;
    }

    /**
     * The slope now.
     *
     * @return units of the value per second; NaN if there is not enough data
     */
    double perSecond() {
        double spread = sumW * sumTt - sumT * sumT;
        boolean isEnough = values >= LEAST_VALUES && spread > LEAST_SPREAD_S * LEAST_SPREAD_S * sumW * sumW;
        return isEnough ? (sumW * sumTv - sumT * sumV) / spread : Double.NaN;
    }
}
