package dev.lampwright.config;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A valid configuration and its origin. */
public final class Examined {
    private final Config config;
    private final Map<String, String> defaults;
    private final Origins origins;

    /** Keeps a copy of the map, in its order. */
    Examined(Config config, Map<String, String> defaults, Origins origins) {
        this.config = config;
        this.defaults = Collections.unmodifiableMap(new LinkedHashMap<>(defaults));
        this.origins = origins;
    }

    /**
     * The configuration.
     *
     * @return the same each time
     */
    public Config config() {
        return config;
    }

    /**
     * The defaults for keys that the file leaves out.
     *
     * @return values as they would be written there, by dotted key
     */
    public Map<String, String> defaults() {
        return defaults;
    }

    /**
     * What is wrong with a key of the file.
     *
     * @param path the key's path; an element of an array has its index as a name
     * @param what what is wrong, to follow the key
     * @param whatWouldBeRight what to do
     * @return the mistake with its file and line
     */
    public Mistake mistake(List<String> path, String what, String whatWouldBeRight) {
        return mistake(path, new MistakeText("", what, whatWouldBeRight));
    }

    /**
     * What is wrong with a key of the file.
     *
     * @param path the key's path; an element of an array has its index as a name
     * @param said what is wrong, and what to do
     * @return the mistake with its file and line
     */
    public Mistake mistake(List<String> path, MistakeText said) {
        Origin origin = origins.of(path);
        return new Mistake(
                origin.file(),
                origin.document().line(path),
                Wording.key(path),
                said.what(),
                said.whatWouldBeRight(),
                said.code(),
                said.values());
    }

    /**
     * The file that a key is in.
     *
     * @param path the key's path
     * @return its name, as in messages
     */
    public String file(List<String> path) {
        return origins.of(path).file();
    }

    /**
     * What is taken from looks that are kept apart from the configuration file.
     *
     * @return for each such file, the paths of its looks, and of the cues if it has them
     */
    public Map<String, List<List<String>>> keptApart() {
        Map<String, List<List<String>>> apart = new LinkedHashMap<>();
        for (Origin origin : origins.laidOver()) {
            List<List<String>> paths = new ArrayList<>();
            keys(List.of("looks")).stream()
                    .map(name -> List.of("looks", name))
                    .filter(path -> origins.of(path).equals(origin))
                    .forEach(paths::add);
            if (origin.document().values().containsKey("cues")) {
                paths.add(List.of("cues"));
            }
            if (!paths.isEmpty()) {
                apart.put(origin.file(), paths);
            }
        }
        return apart;
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

    /**
     * Whether a key is there and {@code true}.
     *
     * @param path the key's path; an element of an array has its index for a name
     * @return false if it is not there
     */
    public boolean isTrue(List<String> path) {
        return Boolean.TRUE.equals(at(path));
    }

    private Object at(List<String> path) {
        Object at = origins.values();
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
