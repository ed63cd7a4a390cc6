package dev.lampwright.signal;

/** A straight line through weighted points, by least squares. Only sums are kept. */
final class WeightedLine {
    private double weight;
    private double sumX;
    private double sumY;
    private double sumXx;
    private double sumXy;
    private double sumYy;

    /** Forgets all points. */
    void clear() {
        weight = 0;
        sumX = 0;
        sumY = 0;
        sumXx = 0;
        sumXy = 0;
        sumYy = 0;
    }

    /** Replaces its points with those of another. */
    void take(WeightedLine other) {
        weight = other.weight;
        sumX = other.sumX;
        sumY = other.sumY;
        sumXx = other.sumXx;
        sumXy = other.sumXy;
        sumYy = other.sumYy;
    }

    /**
     * Adds a point.
     *
     * @param x the position
     * @param y the value
     * @param w the weight, 0 or more
     */
    void add(double x, double y, double w) {
        weight += w;
        sumX += w * x;
        sumY += w * y;
        sumXx += w * x * x;
        sumXy += w * x * y;
        sumYy += w * y * y;
    }

    private double xx() {
        return sumXx - sumX * sumX / weight;
    }

    /** How steep it is, in y per x; NaN if the points do not determine it. */
    double slope() {
        return (sumXy - sumX * sumY / weight) / xx();
    }

    /** The value at a position. */
    double at(double x) {
        return sumY / weight + slope() * (x - sumX / weight);
    }

    /** The variance at a position, for points whose variance is 1 ÷ their weight. */
    double variance(double x) {
        double off = x - sumX / weight;
        return 1 / weight + off * off / xx();
    }

    /** The sum of squared residuals. */
    double rest() {
        return Math.max(0, sumYy - sumY * sumY / weight - slope() * (sumXy - sumX * sumY / weight));
    }
}
