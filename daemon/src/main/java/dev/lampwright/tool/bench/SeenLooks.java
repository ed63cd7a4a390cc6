package dev.lampwright.tool.bench;

import dev.lampwright.tool.bench.LookShelves.Found;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The last looks that somebody asked for, to tell what an edit began with. Safe for many threads. */
final class SeenLooks {
    private static final int MOST = 64;

    private final Map<String, Found> byVersion = new LinkedHashMap<>();

    synchronized void add(Found found) {
        byVersion.remove(found.version());
        byVersion.put(found.version(), found);
        if (byVersion.size() > MOST) {
            byVersion.remove(byVersion.keySet().iterator().next());
        }
    }

    /** The look of a version; empty if it was long ago. */
    synchronized Optional<Found> find(String version) {
        return Optional.ofNullable(byVersion.get(version));
    }
}
