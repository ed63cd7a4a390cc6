package dev.lampwright.desk;

import java.util.Set;
import java.util.TreeSet;

/**
 * The names of the looks that can be asked for.
 *
 * @param inUse the looks of the configuration
 * @param swatches ready-made looks that come with Lampwright, whether or not the configuration uses them
 */
public record KnownLooks(Set<String> inUse, Set<String> swatches) {
    /** Keeps copies of the sets. */
    public KnownLooks {
        inUse = Set.copyOf(inUse);
        swatches = Set.copyOf(swatches);
    }

    boolean has(String name) {
        return inUse.contains(name) || swatches.contains(name);
    }

    /** The valid names, for a refusal. */
    String choice() {
        String names = "choose one of: " + String.join(", ", new TreeSet<>(inUse));
        return swatches.isEmpty() ? names : names + ", or one that `lampwright looks` lists";
    }
}
