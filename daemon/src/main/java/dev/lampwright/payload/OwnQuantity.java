package dev.lampwright.payload;

import java.util.Optional;

/**
 * A quantity that a user's file names: a number of which Lampwright knows nothing, such as print speed, a fan or humidity, or the temperature or target of
 * an {@link OwnHeater}. The values of a number stay in the unit in which they are told, those of a heater are in °C.
 *
 * @param key its name in the configuration
 * @param unit the unit to show behind a value; empty if it has none
 * @param low the value that counts as 0; NaN if the file does not say
 * @param high the value that counts as 1; NaN if the file does not say
 * @param like what it is read like, if it belongs to a heater; empty for a number
 */
public record OwnQuantity(String key, String unit, double low, double high, Optional<Quantity> like) {
    /** Where a reading without a range is made to end when one is invented. */
    private static final double INVENTED_HIGH = 100;

    /**
     * A number.
     *
     * @param key as above
     * @param unit as above
     * @param low as above
     * @param high as above
     */
    public OwnQuantity(String key, String unit, double low, double high) {
        this(key, unit, low, high, Optional.empty());
    }

    /**
     * A temperature that belongs to a heater.
     *
     * @param key its name in the configuration
     * @param like the nozzle's quantity that it is read like
     * @return in °C, without a range
     */
    static OwnQuantity ofHeater(String key, Quantity like) {
        return new OwnQuantity(key, Unit.CELSIUS.word(), Double.NaN, Double.NaN, Optional.of(like));
    }

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
