package dev.lampwright.tool.bench;

import dev.lampwright.config.ReadyLooks;
import dev.lampwright.config.ShopFile;
import dev.lampwright.config.Swatches;
import dev.lampwright.look.Fitting;
import dev.lampwright.toml.TomlEditor;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** All looks, and where each of them is: a look on an upper shelf replaces those of its name below. */
final class LookShelves {
    private final List<Shelf> shelves = new ArrayList<>();
    private final Fitting fitting;

    /** Where a look can be, the uppermost first. */
    enum From {
        /** In the file of looks that is kept apart. */
        OVERLAY("overlay"),
        /** In the configuration file. */
        FILE("file"),
        /** In the file that all rigs share. */
        SHOP("shop"),
        /** Among those that cues put on without any configuration. */
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
     * A look, and where it is.
     *
     * @param from where
     * @param look the look
     * @param toml its text there
     */
    record Found(From from, BenchLook look, String toml) {
        /** Changes whenever the look does. */
        String version() {
            return BenchLook.version(from + "\n" + toml);
        }
    }

    /**
     * One file with looks.
     *
     * @param rig the name of the rig for which the file is read; empty for a file that is of this rig alone
     */
    private record Shelf(From from, TomlEditor text, Optional<String> rig) {
        Optional<Object> get(List<String> path) {
            return text.get(path)
                    .map(value -> rig.map(name -> ShopFile.named(value, name)).orElse(value));
        }

        Optional<String> section(List<String> path) {
            return text.section(path)
                    .map(lines ->
                            rig.map(name -> lines.replace(ShopFile.RIG, name)).orElse(lines));
        }
    }

    private LookShelves(Fitting fitting) {
        this.fitting = fitting;
    }

    /**
     * Looks at all of them.
     *
     * @param files where they are
     * @param texts what is in them
     * @param fitting the lights that they are for
     */
    static LookShelves of(BenchFiles files, BenchTexts texts, Fitting fitting) throws BenchRefusal {
        LookShelves all = new LookShelves(fitting);
        if (texts.kept().isPresent()) {
            all.add(From.OVERLAY, files.overlay(), texts.kept().get(), Optional.empty());
        }
        all.add(From.FILE, files.file(), texts.file(), Optional.empty());
        if (texts.shared().isPresent()) {
            all.add(From.SHOP, files.shop().orElse(files.file()), texts.shared().get(), Optional.of(files.rig()));
        }
        return all;
    }

    private void add(From from, Path file, String text, Optional<String> rig) throws BenchRefusal {
        shelves.add(new Shelf(from, CueText.editor(file, text), rig));
    }

    /** The cues of the user's own that count, of the uppermost file that has any. */
    Optional<Cues> cues() {
        for (Shelf shelf : shelves) {
            Optional<List<Map<String, Object>>> cues = shelf.get(CueText.PATH).flatMap(CueText::of);
            if (cues.isPresent()) {
                return Optional.of(new Cues(shelf.from(), cues.get()));
            }
        }
        return Optional.empty();
    }

    /** Where the cues are that those of a file replace; empty if there are none. */
    Optional<From> cuesBelow(From in) {
        return shelves.stream()
                .filter(shelf -> shelf.from().compareTo(in) > 0)
                .filter(shelf -> shelf.get(CueText.PATH).flatMap(CueText::of).isPresent())
                .map(Shelf::from)
                .findFirst();
    }

    /**
     * Cues, and where they are.
     *
     * @param from in which file
     * @param cues the keys of each, in their order
     */
    record Cues(From from, List<Map<String, Object>> cues) {}

    /** Their names: the built-in ones, those of files, the swatches. */
    Set<String> names() {
        Set<String> names = new LinkedHashSet<>(ReadyLooks.builtIn());
        for (int i = shelves.size() - 1; i >= 0; i--) {
            if (shelves.get(i).get(List.of(BenchLook.LOOKS)).orElse(Map.of()) instanceof Map<?, ?> looks) {
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

    /** The look of a name in one place; empty if it is not there. */
    Optional<Found> find(From from, String name) {
        return all(name).stream().filter(found -> found.from() == from).findFirst();
    }

    /** The look of a name that the uppermost one replaces; empty if there is none. */
    Optional<Found> below(String name) {
        List<Found> all = all(name);
        return all.size() < 2 ? Optional.empty() : Optional.of(all.get(1));
    }

    private List<Found> all(String name) {
        List<Found> all = new ArrayList<>();
        for (Shelf shelf : shelves) {
            if (shelf.get(List.of(BenchLook.LOOKS, name)).orElse(null) instanceof Map<?, ?> table) {
                BenchLook look = new BenchLook(name, copy(table));
                all.add(new Found(shelf.from(), look, shelf.section(look.path()).orElseGet(look::toml)));
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
