package dev.lampwright.colour;

/**
 * How a coordinate of a CSS colour function is written: what a number and a percentage stand for, and its limits on reading.
 *
 * @param perNumber coordinate for each 1
 * @param perPercent coordinate for each 1 %; NaN if a percentage is not allowed
 * @param least lower limit
 * @param most upper limit
 */
record Channel(double perNumber, double perPercent, double least, double most) {
    /** A hue: degrees, or a number with a unit of angle. */
    static final Channel HUE = new Channel(1, Double.NaN, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

    /** Alpha. */
    static final Channel ALPHA = new Channel(1, 0.01, 0, 1);

    /** Without limits. */
    static Channel open(double perNumber, double perPercent) {
        return new Channel(perNumber, perPercent, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    boolean isHue() {
        return Double.isNaN(perPercent);
    }

    double number(double value) {
        return held(value * perNumber);
    }

    double percentage(double value) {
        return held(value * perPercent);
    }

    private double held(double value) {
        return Math.max(least, Math.min(most, value));
    }
}
