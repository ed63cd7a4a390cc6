package dev.lampwright.payload;

import java.util.Collection;
import java.util.List;

/**
 * A heater that a user's file names, such as a second nozzle: it has a temperature and a target, as bed, nozzle and chamber have.
 *
 * @param name the first part of the names of its readings and signals
 */
public record OwnHeater(String name) {
    /** What the name of its temperature ends with. */
    private static final String ACTUAL = ".actual_C";

    /** What the name of its target ends with. */
    private static final String SETPOINT = ".setpoint_C";

    /**
     * The heaters that some quantities belong to.
     *
     * @param quantities those of a file
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
     * The temperature that it is to reach.
     *
     * @return in °C; 0 is off
     */
    public OwnQuantity setpoint() {
        return OwnQuantity.ofHeater(setpointKey(), Quantity.NOZZLE_SETPOINT);
    }
}
