package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.toml.Toml;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The looks that come with Lampwright, the built-in ones and the swatches, as they would stand in a file for some lights. */
public final class ReadyLooks {
    private static final String LOOKS = "looks";
    private static final String ZONE = "zone";
    private static final String DIMMERS = "dimmers";
    private static final String LAYERS = "layers";

    private ReadyLooks() {}

    /**
     * The names of the built-in looks.
     *
     * @return in their order
     */
    public static Set<String> builtIn() {
        return tables(BuiltIn.values()).keySet();
    }

    /**
     * The cues that come after all others.
     *
     * @return the keys of each, in their order
     */
    public static List<Map<String, Object>> cues() {
        return asTables(BuiltIn.values().get("cues"));
    }

    /**
     * A look as a table of the file.
     *
     * @param name of a built-in look or a swatch
     * @param fitting what is fitted; parts for lights that are not there are left out
     * @return its keys; empty if there is none of that name
     */
    public static Optional<Map<String, Object>> table(String name, Fitting fitting) {
        Map<String, Map<String, Object>> builtIn = tables(BuiltIn.values());
        if (builtIn.containsKey(name)) {
            return Optional.of(fitted(builtIn.get(name), fitting));
        }
        return Swatches.names().contains(name)
                ? Optional.of(fitted(
                        tables(Toml.read(Swatches.named(name).toml()).values()).get(name), fitting))
                : Optional.empty();
    }

    private static Map<String, Map<String, Object>> tables(Map<String, Object> file) {
        Map<String, Map<String, Object>> tables = new LinkedHashMap<>();
        asTable(file.get(LOOKS)).forEach((name, look) -> tables.put(name, asTable(look)));
        return tables;
    }

    private static Map<String, Object> fitted(Map<String, Object> look, Fitting fitting) {
        Map<String, Object> fitted = new LinkedHashMap<>(look);
        fitted.computeIfPresent(
                LAYERS,
                (key, layers) -> asTables(layers).stream()
                        .filter(layer ->
                                !layer.containsKey(ZONE) || fitting.zones().containsKey(layer.get(ZONE)))
                        .toList());
        Map<String, Object> dimmers = asTable(look.getOrDefault(DIMMERS, Map.of()));
        dimmers.keySet().retainAll(fitting.dimmerNames());
        fitted.remove(DIMMERS);
        if (!dimmers.isEmpty()) {
            fitted.put(DIMMERS, dimmers);
        }
        return fitted;
    }

    private static List<Map<String, Object>> asTables(Object array) {
        List<Map<String, Object>> tables = new ArrayList<>();
        ((List<?>) array).forEach(each -> tables.add(asTable(each)));
        return tables;
    }

    private static Map<String, Object> asTable(Object table) {
        Map<String, Object> copy = new LinkedHashMap<>();
        ((Map<?, ?>) table).forEach((key, value) -> copy.put(String.valueOf(key), value));
        return copy;
    }
}
