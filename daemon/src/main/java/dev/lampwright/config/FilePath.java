package dev.lampwright.config;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** Paths that the file names. */
final class FilePath {
    private FilePath() {}

    /**
     * Reads a path. It may be left out.
     *
     * @param table where it stands
     * @param key its name
     * @param wanted what would be right, for the complaint
     * @param folder what a relative path starts from
     * @return the path; nothing if it is left out or wrong
     */
    static Optional<Path> read(Table table, String key, String wanted, Path folder) {
        try {
            return table.text(key, wanted).map(text -> folder.resolve(text).normalize());
        } catch (InvalidPathException e) {
            table.mistake(key, "is no path", wanted);
            return Optional.empty();
        }
    }
}
