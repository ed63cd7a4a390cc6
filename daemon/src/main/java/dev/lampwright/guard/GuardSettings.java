package dev.lampwright.guard;

import java.util.List;
import java.util.Optional;

/**
 * The user's settings for the guards. None of them lifts the ceiling.
 *
 * @param dimOrder names of zones and dimmers in the order in which they are dimmed over the ceiling; lights not covered by any come last,
 *     all together. If empty, everything except bed, nozzle and job comes first, then those, all together
 * @param riseSeconds how long dimmed light takes from dark to full once it is allowed, above 0
 * @param allowFlashing whether light may flash more than three times in a second, which can cause seizures
 * @param volts voltage of each supply, by its index; determines how much light its lamps give relative to the strip
 */
public record GuardSettings(
        Optional<List<String>> dimOrder, double riseSeconds, boolean allowFlashing, List<Double> volts) {
    /** The assumed voltage of a supply if none is given. */
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
