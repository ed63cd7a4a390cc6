package dev.lampwright.config;

import dev.lampwright.toml.TomlDocument;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where a configuration comes from: its own file and, for a rig of a shop, the {@code shop.toml} that all rigs share. A key in the
 * rig's own file replaces the same key in the same section there; in {@code [printer]} this applies to the keys of its tables too. Anything
 * with a name, such as a look or a dimmer, counts as one key, as does a whole array. A rig that names its printers takes nothing from the
 * shop's {@code [printer]}.
 */
final class Origins {
    private static final String PRINTER = "printer";
    private static final String PRINTERS = "printers";
    private static final int LEVELS = 2;
    /** Down to {@code printer.readings.bed.actual_C}. */
    private static final int LEVELS_OF_PRINTER = 4;

    private final Origin own;
    private final Optional<Origin> shared;
    private final Map<String, Object> values;

    private Origins(Origin own, Optional<Origin> shared, Map<String, Object> values) {
        this.own = own;
        this.shared = shared;
        this.values = values;
    }

    /** A file on its own. */
    static Origins of(Origin own) {
        return new Origins(own, Optional.empty(), own.document().values());
    }

    /**
     * The file of a rig, and what all rigs share.
     *
     * @param own the rig's
     * @param shared the shop's
     * @param sharedValues the values of the shop's file for this rig
     */
    static Origins of(Origin own, Origin shared, Map<String, Object> sharedValues) {
        return new Origins(
                own, Optional.of(shared), merged(sharedValues, own.document().values()));
    }

    private static Map<String, Object> merged(Map<String, Object> shared, Map<String, Object> own) {
        Map<String, Object> merged = new LinkedHashMap<>(shared);
        if (own.containsKey(PRINTERS)) {
            merged.remove(PRINTER);
        }
        own.forEach((section, value) -> merged.put(section, over(shared.get(section), value, levels(section) - 1)));
        return merged;
    }

    /** The rig's own value; if both are tables, with what only the shared one has. */
    private static Object over(Object shared, Object own, int levels) {
        if (levels == 0 || !(shared instanceof Map<?, ?> before) || !(own instanceof Map<?, ?> after)) {
            return own;
        }
        Map<Object, Object> merged = new LinkedHashMap<>(before);
        after.forEach((key, value) -> merged.put(key, over(before.get(key), value, levels - 1)));
        return merged;
    }

    private static int levels(String section) {
        return section.equals(PRINTER) ? LEVELS_OF_PRINTER : LEVELS;
    }

    /** The combined values of the files. */
    Map<String, Object> values() {
        return values;
    }

    /** The text of the rig's own file. */
    TomlDocument ownDocument() {
        return own.document();
    }

    /** The name of the rig's own file. */
    String ownFile() {
        return own.file();
    }

    /**
     * The file that a key is in.
     *
     * @param path the key; if neither file has it, the file with the table around it counts, the rig's own first
     */
    Origin of(List<String> path) {
        if (shared.isEmpty() || path.isEmpty()) {
            return own;
        }
        Object ours = own.document().values();
        Object theirs = shared.get().document().values();
        int levels = levels(path.get(0));
        for (int i = 0; i < Math.min(levels, path.size()); i++) {
            boolean oursHas = has(ours, path.get(i));
            boolean theirsHas = has(theirs, path.get(i));
            if (!oursHas || !theirsHas) {
                return !oursHas && theirsHas ? shared.get() : own;
            }
            ours = ((Map<?, ?>) ours).get(path.get(i));
            theirs = ((Map<?, ?>) theirs).get(path.get(i));
        }
        return own;
    }

    private static boolean has(Object table, String key) {
        return table instanceof Map<?, ?> map && map.containsKey(key);
    }
}
