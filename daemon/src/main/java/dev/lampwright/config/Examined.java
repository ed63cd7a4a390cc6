package dev.lampwright.config;

import dev.lampwright.toml.TomlDocument;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A good configuration and how it came about.
 *
 * @param config the configuration
 * @param defaults what was taken for keys that the file leaves out, as it would stand there, by dotted key
 * @param text where each key is
 */
public record Examined(Config config, Map<String, String> defaults, TomlDocument text) {
    /** Keeps a copy of the map, in its order. */
    public Examined {
        defaults = Collections.unmodifiableMap(new LinkedHashMap<>(defaults));
    }

    /**
     * What is wrong with a key of the file.
     *
     * @param file what to call the file
     * @param path the key's path; an element of an array has its index for a name
     * @param what what is wrong, to follow the key
     * @param whatWouldBeRight what to do
     * @return the mistake with its line
     */
    public Mistake mistake(String file, List<String> path, String what, String whatWouldBeRight) {
        return new Mistake(file, text.line(path), Wording.key(path), what, whatWouldBeRight);
    }

    /**
     * The keys that a table of the file has.
     *
     * @param path the table's path
     * @return empty if there is no such table
     */
    public Set<String> keys(List<String> path) {
        Set<String> keys = new LinkedHashSet<>();
        if (at(path) instanceof Map<?, ?> table) {
            table.keySet().forEach(key -> keys.add(String.valueOf(key)));
        }
        return keys;
    }

    /**
     * How many elements an array of the file has.
     *
     * @param path path of the table that it is in
     * @param key the array
     * @return 0 if there is no such array
     */
    public int elements(List<String> path, String key) {
        List<String> whole = new ArrayList<>(path);
        whole.add(key);
        return at(whole) instanceof List<?> array ? array.size() : 0;
    }

    private Object at(List<String> path) {
        Object at = text.values();
        for (String name : path) {
            if (at instanceof Map<?, ?> table) {
                at = table.get(name);
            } else if (at instanceof List<?> array) {
                at = array.get(Integer.parseInt(name));
            }
        }
        return at;
    }
}
