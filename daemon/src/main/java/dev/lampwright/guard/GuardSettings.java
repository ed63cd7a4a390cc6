package dev.lampwright.guard;

import java.util.List;
import java.util.Optional;

/**
 * What the user may choose about the guards. No choice lifts the ceiling.
 *
 * @param dimOrder names of zones and dimmers in the order in which they are dimmed over the ceiling; what none of them covers comes
 *     last, all of it alike. Without it, what is neither bed, nozzle nor job comes first, then those, all alike
 * @param riseSeconds how long light that was dimmed takes from dark to full once it may, above 0
 * @param allowFlashing whether light may flash more than three times in a second, which can cause seizures
 * @param volts voltage of each supply, by its index; says how much light its lamps give beside the strip
 */
public record GuardSettings(
        Optional<List<String>> dimOrder, double riseSeconds, boolean allowFlashing, List<Double> volts) {
    /** Voltage assumed for a supply whose voltage is not given. */
    public static final double USUAL_VOLTS = 5;

    /** Nothing chosen. */
    public static final GuardSettings USUAL = new GuardSettings(Optional.empty(), 2, false, List.of());

    /** Keeps copies of the lists. */
    public GuardSettings {
        dimOrder = dimOrder.map(List::copyOf);
        volts = List.copyOf(volts);
    }

    /**
     * The same, but no more than three flashes in a second.
     *
     * @return settings that do not allow flashing
     */
    public GuardSettings withoutFlashing() {
        return new GuardSettings(dimOrder, riseSeconds, false, volts);
    }

    /**
     * The same without a limit on flashes, to find out how often light would flash.
     *
     * @return settings that allow flashing
     */
    public GuardSettings withFlashing() {
        return new GuardSettings(dimOrder, riseSeconds, true, volts);
    }
}
