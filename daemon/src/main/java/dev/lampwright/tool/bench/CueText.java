package dev.lampwright.tool.bench;

import dev.lampwright.toml.TomlEditor;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The cues in the text of a file. */
final class CueText {
    /** The section that they are in. */
    static final String CUES = "cues";

    private static final String LOOK = "look";

    /** The path of the cues. */
    static final List<String> PATH = List.of(CUES);

    private CueText() {}

    /** The cues that a value of that section is; empty if it is something else. */
    static Optional<List<Map<String, Object>>> of(Object value) {
        return value instanceof List<?> array ? Optional.of(tables(array)) : Optional.empty();
    }

    /**
     * Starts to edit a text.
     *
     * @param file where it is from
     * @param text what is in it
     */
    static TomlEditor editor(Path file, String text) throws BenchRefusal {
        try {
            return TomlEditor.of(text);
        } catch (IllegalArgumentException e) {
            throw BenchRefusal.notToml(file.toString(), e.getMessage());
        }
    }

    private static List<Map<String, Object>> tables(List<?> array) {
        List<Map<String, Object>> tables = new ArrayList<>();
        for (Object each : array) {
            if (each instanceof Map<?, ?> table) {
                Map<String, Object> copy = new LinkedHashMap<>();
                table.forEach((key, value) -> copy.put(String.valueOf(key), value));
                tables.add(copy);
            }
        }
        return tables;
    }

    /**
     * Replaces the cues.
     *
     * @param over whether the text is read after another file with cues, so that even none at all must be written
     */
    static void set(TomlEditor text, List<Map<String, Object>> cues, boolean over) {
        if (cues.isEmpty()) {
            text.remove(PATH);
        }
        if (over || !cues.isEmpty()) {
            text.set(PATH, cues);
        }
    }

    /** Puts another look's name into the cues that name one look. */
    static void rename(TomlEditor text, String from, String to) {
        List<Map<String, Object>> cues = text.get(PATH).flatMap(CueText::of).orElse(List.of());
        for (int i = 0; i < cues.size(); i++) {
            if (from.equals(cues.get(i).get(LOOK))) {
                text.set(List.of(CUES, String.valueOf(i), LOOK), to);
            }
        }
    }
}
