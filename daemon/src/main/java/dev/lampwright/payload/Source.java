package dev.lampwright.payload;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Where one value is reported.
 *
 * @param topicFilter MQTT topic filter, which may have {@code +} and {@code #}
 * @param path where the value is in the payload, or in the selected part of it
 * @param cuts what is then extracted from its text, one after the other; none for the value itself
 * @param part which part of the payload to read, selected by the values of its fields; empty for all of it
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
     * @param path where it is in the payload
     * @param cuts what is then extracted from its text
     */
    public Source(String topicFilter, PayloadPath path, List<Cut> cuts) {
        this(topicFilter, path, cuts, Optional.empty());
    }

    /**
     * A value used as is.
     *
     * @param topicFilter MQTT topic filter
     * @param path where it is in the payload
     */
    public Source(String topicFilter, PayloadPath path) {
        this(topicFilter, path, List.of());
    }

    /**
     * Where the value is in a message, for the log.
     *
     * @return for example {@code /plate/now}, or {@code the payload itself, field 3}
     */
    public String place() {
        String where = part.map(selection -> " " + selection).orElse("");
        return Stream.concat(Stream.of(path.toString() + where), cuts.stream().map(Cut::toString))
                .collect(Collectors.joining(", "));
    }
}
