package dev.lampwright.history;

import dev.lampwright.file.KeptFile;
import java.io.IOException;
import java.nio.file.Path;

/** The file in which a daemon keeps its history, for others to read. */
public final class HistoryFile {
    private HistoryFile() {}

    /**
     * Reads what a daemon has kept.
     *
     * @param file its path
     * @return as of the time of writing
     * @throws IOException if it cannot be read or is something else; the message says so, with the file's name
     */
    public static Accounts read(Path file) throws IOException {
        try {
            return HistoryText.read(KeptFile.read(file));
        } catch (IllegalArgumentException | IOException e) {
            throw new IOException(
                    file + ": " + e.getMessage() + "; the next daemon to start moves it aside and begins a new one", e);
        }
    }
}
