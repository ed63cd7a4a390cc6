package dev.lampwright.tool.bench;

import dev.lampwright.toml.TomlEditor;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * A look as a table of the file, whether it stands in one or not.
 *
 * @param name its name
 * @param table its keys, with values of the kinds that the reader of the file gives
 */
record BenchLook(String name, Map<String, Object> table) {
    /** The section that looks are in. */
    static final String LOOKS = "looks";

    /** The key of the layers. */
    static final String LAYERS = "layers";

    /** The most layers that a look of the bench has; our own choice. */
    static final int MOST_LAYERS = 32;

    /** The form of a name that the bench writes, as a regular expression. */
    static final String NAME_FORM = "[a-z0-9-]{1,40}";

    private static final Pattern NAME = Pattern.compile(NAME_FORM);

    /** Keeps a copy of the table, in its order. */
    BenchLook {
        table = Collections.unmodifiableMap(new LinkedHashMap<>(table));
    }

    /**
     * Takes the look that a request carries.
     *
     * @param name its name
     * @param body the request's
     */
    static BenchLook of(String name, BenchBody body) throws BenchRefusal {
        BenchLook look = new BenchLook(name, body.table("look"));
        if (look.layers().size() > MOST_LAYERS) {
            throw new BenchRefusal(400, "too_many_layers", "the look has more than " + MOST_LAYERS + " layers")
                    .with("most", MOST_LAYERS);
        }
        return look;
    }

    /** Refuses a name that the bench does not write. */
    static void requireName(String name) throws BenchRefusal {
        if (!NAME.matcher(name).matches()) {
            throw new BenchRefusal(400, "bad_name", "give a name of 1 to 40 small letters, digits and hyphens");
        }
    }

    /** The path of the look in the file. */
    List<String> path() {
        return List.of(LOOKS, name);
    }

    /** Its layers, the lowest first; whatever is not a table is left out. */
    List<Map<?, ?>> layers() {
        List<?> layers = table.get(LAYERS) instanceof List<?> array ? array : List.of();
        return layers.stream()
                .filter(layer -> layer instanceof Map)
                .<Map<?, ?>>map(layer -> (Map<?, ?>) layer)
                .toList();
    }

    /** One of its layers and nothing else, shown even if it is hidden. */
    BenchLook alone(int layer) {
        Map<String, Object> only = new LinkedHashMap<>();
        layers().get(layer).forEach((key, value) -> only.put(String.valueOf(key), value));
        only.remove("hidden");
        return new BenchLook(name, Map.of(LAYERS, List.of(only)));
    }

    /** Its text as it can stand in a file. */
    String toml() {
        TomlEditor editor = TomlEditor.of("");
        editor.set(path(), table);
        return editor.text().strip() + "\n";
    }

    /** What distinguishes a text from others: its SHA-256 in hexadecimal digits. */
    static String version(String text) {
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
