package dev.lampwright.payload;

import java.util.Optional;

/**
 * A user-defined quantity: a number without a built-in meaning, such as print speed, a fan or humidity, or the temperature or target of an
 * {@link OwnHeater}. The values of a number stay in the unit in which they are reported, those of a heater are in °C.
 *
 * @param key its name in the configuration
 * @param unit the unit to show after a value; empty if it has none
 * @param low the value that counts as 0; NaN if the file does not say
 * @param high the value that counts as 1; NaN if the file does not say
 * @param like the quantity that it is read like, if it belongs to a heater; empty for a number
 */
public record OwnQuantity(String key, String unit, double low, double high, Optional<Quantity> like) {
    /** The upper end assumed for invented values of a reading without a range. */
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
     * @param share position within the range, 0 to 1
     * @return in its unit
     */
    public double at(double share) {
        double from = hasRange() ? low : 0;
        double to = hasRange() ? high : INVENTED_HIGH;
        return from + (to - from) * share;
    }

    /**
     * Whether a range is known.
     *
     * @return false if its followers must specify bounds
     */
    public boolean hasRange() {
        return !Double.isNaN(low);
    }
}
