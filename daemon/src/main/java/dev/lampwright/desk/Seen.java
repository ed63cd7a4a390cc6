package dev.lampwright.desk;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How often each printer's fault has been acknowledged, and its alarm reset, by its name. Immutable.
 *
 * @param acknowledgements how often a fault has been acknowledged
 * @param resets how often the alarm has been reset
 */
record Seen(Map<String, Long> acknowledgements, Map<String, Long> resets) {
    /** Nothing has been done. */
    static final Seen NONE = new Seen(Map.of(), Map.of());

    /** Keeps copies. */
    Seen {
        acknowledgements = Map.copyOf(acknowledgements);
        resets = Map.copyOf(resets);
    }

    Seen acknowledged(String printer) {
        return new Seen(oneMore(acknowledgements, printer), resets);
    }

    Seen reset(String printer) {
        return new Seen(acknowledgements, oneMore(resets, printer));
    }

    private static Map<String, Long> oneMore(Map<String, Long> counts, String printer) {
        Map<String, Long> more = new HashMap<>(counts);
        more.merge(printer, 1L, Long::sum);
        return more;
    }

    /** The printer whose fault has been acknowledged since; empty if none. */
    Optional<String> acknowledgedSince(Seen before) {
        return acknowledgements.entrySet().stream()
                .filter(entry -> !entry.getValue().equals(before.acknowledgements.get(entry.getKey())))
                .map(Map.Entry::getKey)
                .findFirst();
    }
}
