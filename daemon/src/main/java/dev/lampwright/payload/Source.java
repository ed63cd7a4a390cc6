package dev.lampwright.payload;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Where one value is told.
 *
 * @param topicFilter MQTT topic filter, which may have {@code +} and {@code #}
 * @param path where in the payload, or in the chosen part of it, a value stands
 * @param cuts what is then cut out of its text, one after the other; none if the value itself is wanted
 * @param part which part of the payload to read, chosen by the values of its fields; empty for all of it
 */
public record Source(String topicFilter, PayloadPath path, List<Cut> cuts, Optional<Selection> part) {
    /** Keeps a copy of the list. */
    public Source {
        cuts = List.copyOf(cuts);
    }

    /**
     * A value in the whole of a payload.
     *
     * @param topicFilter MQTT topic filter
     * @param path where in the payload it stands
     * @param cuts what is then cut out of its text
     */
    public Source(String topicFilter, PayloadPath path, List<Cut> cuts) {
        this(topicFilter, path, cuts, Optional.empty());
    }

    /**
     * A value that is wanted as it stands.
     *
     * @param topicFilter MQTT topic filter
     * @param path where in the payload it stands
     */
    public Source(String topicFilter, PayloadPath path) {
        this(topicFilter, path, List.of());
    }

    /**
     * Where in a message the value stands, for the log.
     *
     * @return for instance {@code /plate/now}, or {@code the payload itself, field 3}
     */
    public String place() {
        String where = part.map(selection -> " " + selection).orElse("");
        return Stream.concat(Stream.of(path.toString() + where), cuts.stream().map(Cut::toString))
                .collect(Collectors.joining(", "));
    }
}
