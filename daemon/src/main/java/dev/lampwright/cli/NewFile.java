package dev.lampwright.cli;

import dev.lampwright.file.AtomicFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes a file whole or not at all. */
final class NewFile {
    private NewFile() {}

    /**
     * Checks that a file may be written, and can be written now.
     *
     * @param file its path
     * @param replace whether an existing one may be replaced
     * @throws IOException if not; the message is for the user
     */
    static void requireFree(Path file, boolean replace) throws IOException {
        if (Files.isRegularFile(file) && !replace) {
            throw new IOException(file + ": already exists; choose another path, or use --force to replace it");
        }
        AtomicFile.requireWritable(file);
    }

    /**
     * Writes it.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @param replace whether an existing one may be replaced
     * @throws IOException if it cannot be written; nothing has changed then; the message is for the user
     */
    static void write(Path file, String text, boolean replace) throws IOException {
        requireFree(file, replace);
        AtomicFile.replace(file, text);
    }
}
