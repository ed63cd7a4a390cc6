package dev.lampwright.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One kind of table of the file, and the keys that it may have.
 *
 * @param path where it is; a name in capitals is chosen by the user: {@code dimmers.NAME}. Empty for the outermost table
 * @param help what it is about, in one line
 * @param keys the keys, in the order of the example and the reference
 */
record Section(String path, String help, List<Key<?>> keys) {
    Section {
        keys = List.copyOf(keys);
    }

    static Section of(String path, String help, Key<?>... keys) {
        return new Section(path, help, List.of(keys));
    }

    /** The same with additional keys in front. */
    Section after(List<Key<?>> others) {
        List<Key<?>> all = new ArrayList<>(others);
        all.addAll(keys);
        return new Section(path, help, all);
    }

    /** The names of its keys, in their order. */
    List<String> names() {
        return keys.stream().map(Key::name).toList();
    }

    /** A key by its name. A loop, since reading a file asks this thousands of times: a stream took a third of the reading. */
    Optional<Key<?>> key(String name) {
        for (Key<?> key : keys) {
            if (key.name().equals(name)) {
                return Optional.of(key);
            }
        }
        return Optional.empty();
    }

    /** For each key that does not apply in every table, what it goes with. */
    Map<String, String> goesWith() {
        Map<String, String> goesWith = new LinkedHashMap<>();
        keys.stream().filter(key -> !key.goesWith().isEmpty()).forEach(key -> goesWith.put(key.name(), key.goesWith()));
        return goesWith;
    }
}
