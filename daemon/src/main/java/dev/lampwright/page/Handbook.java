package dev.lampwright.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The handbook that the package installs, for the page to link to: only files that are in its folder when the page opens, and only of file
 * types used in a handbook.
 */
final class Handbook {
    /** Where the package installs it. Nothing depends on it: an administrator may leave documentation out. */
    static final Path INSTALLED = Path.of("/usr/share/doc/lampwright/handbook");

    /** No handbook. */
    static final Handbook NONE = new Handbook(Map.of());

    /** The path prefix of its files. */
    static final String PATH = "/handbook/";

    private static final int FOLDERS_DEEP = 2;
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "toml", "text/plain; charset=utf-8",
            "png", "image/png",
            "gif", "image/gif");

    private final Map<String, Path> files;

    private Handbook(Map<String, Path> files) {
        this.files = files;
    }

    /**
     * The handbook in a folder.
     *
     * @param folder where it is; without one there is no handbook
     */
    static Handbook in(Path folder) {
        try (Stream<Path> files = Files.walk(folder, FOLDERS_DEEP)) {
            return new Handbook(files.filter(file -> TYPES.containsKey(kind(file)) && Files.isRegularFile(file))
                    .collect(Collectors.toMap(
                            file -> PATH + folder.relativize(file), Function.identity(), (a, b) -> a, TreeMap::new)));
        } catch (IOException | UncheckedIOException e) {
            return NONE;
        }
    }

    private static String kind(Path file) {
        String name = file.getFileName().toString();
        return name.substring(name.lastIndexOf('.') + 1);
    }

    /** Whether there is one. */
    boolean exists() {
        return files.containsKey(PATH + "index.html");
    }

    /** Whether it has a file with this path, such as {@code /handbook/index.html}. */
    boolean has(String path) {
        return files.containsKey(path);
    }

    /**
     * One of its files.
     *
     * @param path one that it {@link #has}
     * @throws IOException if the file can no longer be read
     */
    StaticFile file(String path) throws IOException {
        Path file = files.get(path);
        return new StaticFile(TYPES.get(kind(file)), Files.readAllBytes(file));
    }
}
