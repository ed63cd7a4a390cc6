package dev.lampwright.printer;

import java.util.Map;
import java.util.Optional;

/**
 * Where the printer says everything that Lampwright wants to know.
 *
 * @param state where it says what it is doing; empty if it does not, and then the state is told from the readings
 * @param readings where it says each quantity; those not in the map are not known
 */
public record Bindings(Optional<StateBinding> state, Map<Quantity, Binding> readings) {
    /** Keeps a copy of the map. */
    public Bindings {
        readings = Map.copyOf(readings);
    }
}
