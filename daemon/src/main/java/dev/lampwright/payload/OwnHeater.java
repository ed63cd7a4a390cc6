package dev.lampwright.payload;

import java.util.Collection;
import java.util.List;

/**
 * A user-defined heater, such as a second nozzle, with a temperature and a target like bed, nozzle and chamber.
 *
 * @param name the first part of the names of its readings and signals
 */
public record OwnHeater(String name) {
    /** The suffix of its temperature's name. */
    private static final String ACTUAL = ".actual_C";

    /** The suffix of its target's name. */
    private static final String SETPOINT = ".setpoint_C";

    /**
     * The heaters that quantities belong to.
     *
     * @param quantities the quantities of a file
     * @return in their order
     */
    public static List<OwnHeater> among(Collection<OwnQuantity> quantities) {
        return quantities.stream()
                .filter(quantity ->
                        quantity.like().filter(Quantity.NOZZLE_ACTUAL::equals).isPresent())
                .map(OwnQuantity::key)
                .map(key -> new OwnHeater(key.substring(0, key.length() - ACTUAL.length())))
                .toList();
    }

    /**
     * The name of its temperature.
     *
     * @return in the configuration
     */
    public String actualKey() {
        return name + ACTUAL;
    }

    /**
     * The name of its target.
     *
     * @return in the configuration
     */
    public String setpointKey() {
        return name + SETPOINT;
    }

    /**
     * Its temperature.
     *
     * @return in °C
     */
    public OwnQuantity actual() {
        return OwnQuantity.ofHeater(actualKey(), Quantity.NOZZLE_ACTUAL);
    }

    /**
     * Its target temperature.
     *
     * @return in °C; 0 is off
     */
    public OwnQuantity setpoint() {
        return OwnQuantity.ofHeater(setpointKey(), Quantity.NOZZLE_SETPOINT);
    }
}
