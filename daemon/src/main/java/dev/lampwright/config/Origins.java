package dev.lampwright.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where a configuration comes from: its own file and, for a rig of a shop, the {@code shop.toml} that all rigs share; above them, perhaps,
 * looks and cues that are kept elsewhere. A key in a file replaces the same key in the same section of those below it; in {@code [printer]}
 * this applies to the keys of its tables too. Anything with a name, such as a look or a dimmer, counts as one key, as does a whole array. A
 * rig that names its printers takes nothing from the shop's {@code [printer]}.
 */
final class Origins {
    private static final String PRINTER = "printer";
    private static final String PRINTERS = "printers";
    private static final int LEVELS = 2;
    /** Down to {@code printer.readings.bed.actual_C}. */
    private static final int LEVELS_OF_PRINTER = 4;

    private final Origin top;
    private final Optional<Origins> below;
    /** Whether what is in neither is missing below. */
    private final boolean laidOver;

    private final Map<String, Object> values;

    private Origins(Origin top, Optional<Origins> below, boolean laidOver, Map<String, Object> values) {
        this.top = top;
        this.below = below;
        this.laidOver = laidOver;
        this.values = values;
    }

    /** A file on its own. */
    static Origins of(Origin own) {
        return of(own, own.document().values());
    }

    private static Origins of(Origin own, Map<String, Object> values) {
        return new Origins(own, Optional.empty(), false, values);
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
                own,
                Optional.of(of(shared, sharedValues)),
                false,
                merged(sharedValues, own.document().values()));
    }

    /**
     * These with looks and cues from elsewhere, which take the place of those of the same names.
     *
     * @param over what lies on top; of whatever else it has nothing is taken
     */
    Origins under(Origin over) {
        Map<String, Object> lights = new LinkedHashMap<>(over.document().values());
        lights.keySet().retainAll(LooksOverlay.SECTIONS);
        return new Origins(over, Optional.of(this), true, merged(values, lights));
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

    /** The files, that on top first. */
    List<Origin> all() {
        List<Origin> all = new ArrayList<>(List.of(top));
        below.ifPresent(others -> all.addAll(others.all()));
        return all;
    }

    /** Those that were laid over a file, that on top first. */
    List<Origin> laidOver() {
        List<Origin> all = new ArrayList<>();
        if (laidOver) {
            all.add(top);
            all.addAll(below.orElseThrow().laidOver());
        }
        return all;
    }

    /**
     * The file that a key is in.
     *
     * @param path the key; if no file has it, the file with the table around it counts, that on top first
     */
    Origin of(List<String> path) {
        return isBelow(path) ? below.orElseThrow().of(path) : top;
    }

    private boolean isBelow(List<String> path) {
        if (below.isEmpty() || path.isEmpty()) {
            return laidOver;
        }
        Object ours = top.document().values();
        Object theirs = below.get().values();
        int levels = levels(path.get(0));
        for (int i = 0; i < Math.min(levels, path.size()); i++) {
            boolean oursHas = has(ours, path.get(i));
            boolean theirsHas = has(theirs, path.get(i));
            if (!oursHas || !theirsHas) {
                return !oursHas && (theirsHas || laidOver);
            }
            ours = ((Map<?, ?>) ours).get(path.get(i));
            theirs = ((Map<?, ?>) theirs).get(path.get(i));
        }
        return false;
    }

    private static boolean has(Object table, String key) {
        return table instanceof Map<?, ?> map && map.containsKey(key);
    }
}
