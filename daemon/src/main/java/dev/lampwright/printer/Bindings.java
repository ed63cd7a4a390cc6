package dev.lampwright.printer;

import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Where the printer says everything that Lampwright wants to know. What is told in several places is what the newest message says; of
 * several that one message speaks to, the last in the list counts.
 *
 * @param states where it says what it is doing; none if it does not, and then the state is told from the readings
 * @param readings where it says each quantity, at least one place each; those not in the map are not told
 * @param events where it says that something begins and ends, by name
 * @param faultText where it says in its own words what is wrong
 * @param will where its broker says that it is gone
 */
public record Bindings(
        List<StateBinding> states,
        Map<Quantity, List<Binding>> readings,
        Map<String, EventBinding> events,
        Optional<Source> faultText,
        Optional<WillBinding> will) {
    /**
     * Those of a printer without a last will.
     *
     * @param states as above
     * @param readings as above
     * @param events as above
     * @param faultText as above
     */
    public Bindings(
            List<StateBinding> states,
            Map<Quantity, List<Binding>> readings,
            Map<String, EventBinding> events,
            Optional<Source> faultText) {
        this(states, readings, events, faultText, Optional.empty());
    }

    /** Keeps copies. */
    public Bindings {
        states = List.copyOf(states);
        readings = copyOf(readings);
        events = Map.copyOf(events);
    }

    private static Map<Quantity, List<Binding>> copyOf(Map<Quantity, List<Binding>> readings) {
        Map<Quantity, List<Binding>> copy = new LinkedHashMap<>();
        readings.forEach((quantity, bindings) -> copy.put(quantity, List.copyOf(bindings)));
        return Map.copyOf(copy);
    }

    /**
     * The topics to subscribe to.
     *
     * @return every topic filter that is bound, each once
     */
    public List<String> topicFilters() {
        return Stream.of(
                        states.stream().map(StateBinding::source),
                        readings.values().stream().flatMap(Collection::stream).map(Binding::source),
                        events.values().stream().map(EventBinding::source),
                        faultText.stream(),
                        will.stream().map(WillBinding::source))
                .flatMap(Function.identity())
                .map(Source::topicFilter)
                .distinct()
                .sorted()
                .toList();
    }
}
