package dev.lampwright.config;

import dev.lampwright.broker.Broker;
import dev.lampwright.printer.Bindings;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is exchanged through the broker. If this is the same in another configuration, the connection stays.
 *
 * @param broker where the broker is
 * @param printers where each printer reports what, by name; a single one without a name has an empty one
 * @param prefix prefix of the daemon's own topics, without a trailing slash
 */
public record TalkSpec(Broker broker, Map<String, Bindings> printers, String prefix) {
    /** The prefix if none is configured. */
    public static final String USUAL_PREFIX = "lampwright";

    /** Keeps a copy of the map, in its order. */
    public TalkSpec {
        printers = Collections.unmodifiableMap(new LinkedHashMap<>(printers));
    }

    /**
     * Everything that is reported, whichever printer it is about.
     *
     * @return the bindings of the only printer, or of all of them combined
     */
    public Bindings bindings() {
        return printers.values().stream().reduce(Bindings::and).orElseThrow();
    }
}
