package dev.lampwright.config;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A good configuration and how it came about.
 *
 * @param config the configuration
 * @param defaults what was taken for keys that the file leaves out, as it would stand there, by dotted key
 */
public record Examined(Config config, Map<String, String> defaults) {
    /** Keeps a copy of the map, in its order. */
    public Examined {
        defaults = Collections.unmodifiableMap(new LinkedHashMap<>(defaults));
    }
}
