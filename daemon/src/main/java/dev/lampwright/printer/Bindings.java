package dev.lampwright.printer;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Where the printer says everything that Lampwright wants to know.
 *
 * @param state where it says what it is doing; empty if it does not, and then the state is told from the readings
 * @param readings where it says each quantity; those not in the map are not known
 * @param events where it says that something begins and ends, by name
 */
public record Bindings(
        Optional<StateBinding> state, Map<Quantity, Binding> readings, Map<String, EventBinding> events) {
    /** Keeps copies of the maps. */
    public Bindings {
        readings = Map.copyOf(readings);
        events = Map.copyOf(events);
    }

    /**
     * The topics to subscribe to.
     *
     * @return every topic filter that is bound, each once
     */
    public List<String> topicFilters() {
        return Stream.of(
                        state.stream().map(StateBinding::topicFilter),
                        readings.values().stream().map(Binding::topicFilter),
                        events.values().stream().map(EventBinding::topicFilter))
                .flatMap(Function.identity())
                .distinct()
                .sorted()
                .toList();
    }
}
