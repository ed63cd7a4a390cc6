package dev.lampwright.payload;

/**
 * A quantity that a user's file names and Lampwright knows nothing of: print speed, a fan, humidity. Its values stay in the unit in which they
 * are told.
 *
 * @param key its name in the configuration
 * @param unit the unit to show behind a value; empty if it has none
 * @param low the value that counts as 0; NaN if the file does not say
 * @param high the value that counts as 1; NaN if the file does not say
 */
public record OwnQuantity(String key, String unit, double low, double high) {
    /** Where a reading without a range is made to end when one is invented. */
    private static final double INVENTED_HIGH = 100;

    /**
     * An invented value.
     *
     * @param share how far between the ends of the range, 0 to 1
     * @return in its unit
     */
    public double at(double share) {
        double from = hasRange() ? low : 0;
        double to = hasRange() ? high : INVENTED_HIGH;
        return from + (to - from) * share;
    }

    /**
     * Whether it is known what counts as 0 and as 1.
     *
     * @return false if whatever follows it has to say so
     */
    public boolean hasRange() {
        return !Double.isNaN(low);
    }
}
