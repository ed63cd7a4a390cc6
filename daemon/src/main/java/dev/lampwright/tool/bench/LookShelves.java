package dev.lampwright.tool.bench;

import dev.lampwright.config.ReadyLooks;
import dev.lampwright.config.Swatches;
import dev.lampwright.look.Fitting;
import dev.lampwright.toml.TomlEditor;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** All looks that there are, and where each of them stands: what is above takes the place of what is below. */
final class LookShelves {
    private final List<Shelf> shelves = new ArrayList<>();
    private final Fitting fitting;

    /** Where a look can be written, the uppermost first. */
    enum From {
        /** In the file of looks that is kept apart. */
        OVERLAY("overlay"),
        /** In the configuration file. */
        FILE("file"),
        /** In the file that all rigs share. */
        SHOP("shop"),
        /** Among those that cues put on without a word of configuration. */
        BUILT_IN("built-in"),
        /** In the swatch book. */
        SWATCH("swatch");

        private final String word;

        From(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    /**
     * A look where it stands.
     *
     * @param from where
     * @param look the look
     * @param toml its text there
     */
    record Found(From from, BenchLook look, String toml) {
        /** Tells it from what it is after a change. */
        String version() {
            return BenchLook.version(from + "\n" + toml);
        }
    }

    /** One file with looks. */
    private record Shelf(From from, TomlEditor text) {}

    private LookShelves(Fitting fitting) {
        this.fitting = fitting;
    }

    /**
     * Looks at all of them.
     *
     * @param files where they are
     * @param fitting the lights that they are for
     */
    static LookShelves read(BenchFiles files, Fitting fitting) throws BenchRefusal {
        LookShelves all = new LookShelves(fitting);
        Optional<String> kept = files.kept();
        if (kept.isPresent()) {
            all.add(From.OVERLAY, kept.get());
        }
        all.add(From.FILE, files.text());
        Optional<String> shared = files.shared();
        if (shared.isPresent()) {
            all.add(From.SHOP, shared.get());
        }
        return all;
    }

    private void add(From from, String text) throws BenchRefusal {
        try {
            shelves.add(new Shelf(from, TomlEditor.of(text)));
        } catch (IllegalArgumentException e) {
            throw new BenchRefusal(
                    500, "not_read", "the file with the looks is not valid TOML: " + e.getMessage() + "; fix it first");
        }
    }

    /** Their names: the built-in ones, those of files, the swatches. */
    Set<String> names() {
        Set<String> names = new LinkedHashSet<>(ReadyLooks.builtIn());
        for (int i = shelves.size() - 1; i >= 0; i--) {
            if (shelves.get(i).text().get(List.of(BenchLook.LOOKS)).orElse(Map.of()) instanceof Map<?, ?> looks) {
                looks.keySet().forEach(name -> names.add(String.valueOf(name)));
            }
        }
        names.addAll(Swatches.names());
        return names;
    }

    /** A look of a name; empty if there is none. */
    Optional<Found> find(String name) {
        List<Found> all = all(name);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(0));
    }

    /** The look of a name that stands in one file or the other; empty if it does not stand there. */
    Optional<Found> find(From from, String name) {
        return all(name).stream().filter(found -> found.from() == from).findFirst();
    }

    /** Where the look would be from if it were not where it is; empty if nowhere. */
    Optional<Found> below(String name) {
        List<Found> all = all(name);
        return all.size() < 2 ? Optional.empty() : Optional.of(all.get(1));
    }

    private List<Found> all(String name) {
        List<Found> all = new ArrayList<>();
        for (Shelf shelf : shelves) {
            if (shelf.text().get(List.of(BenchLook.LOOKS, name)).orElse(null) instanceof Map<?, ?> table) {
                BenchLook look = new BenchLook(name, copy(table));
                all.add(new Found(
                        shelf.from(), look, shelf.text().section(look.path()).orElseGet(look::toml)));
            }
        }
        ReadyLooks.table(name, fitting).ifPresent(table -> {
            BenchLook look = new BenchLook(name, table);
            From from = ReadyLooks.builtIn().contains(name) ? From.BUILT_IN : From.SWATCH;
            all.add(new Found(from, look, look.toml()));
        });
        return all;
    }

    private static Map<String, Object> copy(Map<?, ?> table) {
        Map<String, Object> copy = new LinkedHashMap<>();
        table.forEach((key, value) -> copy.put(String.valueOf(key), value));
        return copy;
    }
}
