package dev.lampwright.config;

import dev.lampwright.toml.Toml;
import java.nio.file.Path;
import java.util.Set;

/**
 * Looks and cues that are kept apart from a configuration file and read after it. A look takes the place of that of the same name; if there
 * are cues, they take the place of all of the file's.
 *
 * @param name what to call it in complaints, such as its path
 * @param text TOML with {@code [looks.NAME]} and {@code [[cues]]}; anything else is a mistake
 */
public record LooksOverlay(String name, String text) {
    /** The sections that it may have. */
    static final Set<String> SECTIONS = Set.of("looks", "cues");

    /**
     * Reads a file.
     *
     * @param file its path
     * @return what it says
     * @throws ConfigException if it cannot be read
     */
    public static LooksOverlay read(Path file) throws ConfigException {
        return new LooksOverlay(file.toString(), FileText.read(file));
    }

    /** The same as part of a configuration. Nothing in it is a path. */
    Origin origin() {
        return new Origin(name, Toml.read(text), Path.of("").toAbsolutePath());
    }

    /** Notes what may not be in it. */
    static void noteOthers(Origin overlay, Mistakes findings) {
        overlay.document().values().keySet().stream()
                .filter(section -> !SECTIONS.contains(section))
                .forEach(section -> findings.mistakeIn(
                        overlay, section, "may not be in this file", "keep it in the configuration file itself"));
    }
}
