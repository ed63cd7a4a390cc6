package dev.lampwright.printer;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

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

    /**
     * The topics to subscribe to.
     *
     * @return every topic filter that is bound, each once
     */
    public List<String> topicFilters() {
        return Stream.concat(
                        state.stream().map(StateBinding::topicFilter),
                        readings.values().stream().map(Binding::topicFilter))
                .distinct()
                .sorted()
                .toList();
    }
}
