package dev.lampwright.payload;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Where one value is told.
 *
 * @param topicFilter MQTT topic filter, which may have {@code +} and {@code #}
 * @param path where in the payload a value stands
 * @param cuts what is then cut out of its text, one after the other; none if the value itself is wanted
 */
public record Source(String topicFilter, PayloadPath path, List<Cut> cuts) {
    /** Keeps a copy of the list. */
    public Source {
        cuts = List.copyOf(cuts);
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
        return Stream.concat(Stream.of(path.toString()), cuts.stream().map(Cut::toString))
                .collect(Collectors.joining(", "));
    }
}
