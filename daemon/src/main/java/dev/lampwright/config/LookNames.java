package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The looks that a cue may name: those of the file, the built-in ones, and the swatches, each of which is read when it is first named. */
final class LookNames {
    private final Map<String, LookSpec> looks;
    private final Fitting fitting;

    /**
     * Starts with the looks that exist anyway.
     *
     * @param looks the built-in ones and those of the file
     * @param fitting what is fitted
     */
    LookNames(Map<String, LookSpec> looks, Fitting fitting) {
        this.looks = new LinkedHashMap<>(looks);
        this.fitting = fitting;
    }

    /**
     * The look that a key names.
     *
     * @param table where it is
     * @param key the key
     * @return the look; empty if the name is left out or wrong
     */
    Optional<LookSpec> named(Table table, String key) {
        Set<String> known = new LinkedHashSet<>(looks.keySet());
        known.addAll(Swatches.names());
        String all =
                "give one of \"" + String.join("\", \"", looks.keySet()) + "\", or one that `lampwright looks` lists";
        return table.name(key, "look", known, all).map(this::look);
    }

    private LookSpec look(String name) {
        return looks.computeIfAbsent(
                name, swatch -> Swatches.look(swatch, fitting).orElseThrow());
    }

    /**
     * The looks that are in use.
     *
     * @return the initial ones, followed by the swatches that were named
     */
    Map<String, LookSpec> looks() {
        return looks;
    }
}
