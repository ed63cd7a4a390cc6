package dev.lampwright.config;

import dev.lampwright.cue.CueSpec;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import dev.lampwright.toml.Toml;
import dev.lampwright.toml.TomlDocument;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;

/**
 * The built-in looks and cues. They are in a file that comes with Lampwright, written like a user's. The file is parsed once, and its looks are
 * read once for consecutive rigs with the same fitting, as most rigs of a shop have. That halves the work of reading a shop.
 */
final class BuiltIn {
    private static final String FILE = "built-in.toml";
    private static final String LOOKS = "looks";
    private static final String CUES = "cues";
    private static final TomlDocument DOCUMENT = Toml.read(text());
    private static final AtomicReference<Fitted> LAST = new AtomicReference<>();

    private BuiltIn() {}

    /** Looks, and what they are for. */
    private record Fitted(Fitting fitting, Map<String, LookSpec> looks) {}

    /**
     * The looks.
     *
     * @param fitting what they are for; parts for optional lights are left out if those are not fitted
     * @return by name, in their order
     */
    static Map<String, LookSpec> looks(Fitting fitting) {
        Fitted last = LAST.get();
        if (last == null || !last.fitting().equals(fitting)) {
            last = new Fitted(fitting, readLooks(fitting));
            LAST.set(last);
        }
        return last.looks();
    }

    private static Map<String, LookSpec> readLooks(Fitting fitting) {
        Table root = root(LOOKS);
        Map<String, LookSpec> looks = LooksSection.ofLampwright(fitting).read(root.table(LOOKS));
        root.requireRight();
        return Collections.unmodifiableMap(new LinkedHashMap<>(looks));
    }

    /**
     * The cues that come after all others.
     *
     * @param names the looks that there are
     * @return in their order
     */
    static List<CueSpec> cues(LookNames names) {
        Table root = root(CUES);
        List<CueSpec> cues = new CuesSection(names, Set.of(), List.of(), List.of()).read(root.tables(CUES));
        root.requireRight();
        return cues;
    }

    /** The values of the file: {@code looks}, a table of tables, and {@code cues}, an array of tables. */
    static Map<String, Object> values() {
        return DOCUMENT.values();
    }

    private static Table root(String key) {
        return Table.root(Map.of(key, values().get(key)), new Mistakes(FILE, DOCUMENT));
    }

    private static String text() {
        try (InputStream file = BuiltIn.class.getResourceAsStream(FILE)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
