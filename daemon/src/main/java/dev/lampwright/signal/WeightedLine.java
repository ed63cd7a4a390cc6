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

    /** Takes over the points of another, in place of its own. */
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
     * @param x where
     * @param y how high
     * @param w how much it counts, 0 or more
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

    /** How steep it is, in y per x; no number if the points do not say. */
    double slope() {
        return (sumXy - sumX * sumY / weight) / xx();
    }

    /** How high it is somewhere. */
    double at(double x) {
        return sumY / weight + slope() * (x - sumX / weight);
    }

    /** The variance at a place, for points whose variance is 1 ÷ their weight. */
    double variance(double x) {
        double off = x - sumX / weight;
        return 1 / weight + off * off / xx();
    }

    /** The squares of what is left, all together. */
    double rest() {
        return Math.max(0, sumYy - sumY * sumY / weight - slope() * (sumXy - sumX * sumY / weight));
    }
}
