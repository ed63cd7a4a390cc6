package dev.lampwright.file;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Files that are there whole or not at all. */
public final class AtomicFile {
    private AtomicFile() {}

    /**
     * Writes a file in place of any that is there.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws IOException if it cannot be written; the text says what to do
     */
    public static void replace(Path file, String text) throws IOException {
        write(
                file,
                text,
                beside ->
                        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING));
    }

    /**
     * Writes a file that is not there yet.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws FileAlreadyExistsException if it is there
     * @throws IOException if it cannot be written; the text says what to do
     */
    public static void create(Path file, String text) throws IOException {
        write(file, text, beside -> Files.move(beside, file));
    }

    /**
     * Makes sure that a file could be written now; nothing is there afterwards that was not before.
     *
     * @param file its path
     * @throws IOException if it could not; the text says what to do
     */
    public static void requireWritable(Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            String what = Files.isDirectory(file) ? "is a folder" : "is a device or a pipe";
            throw new IOException(file + ": " + what + "; give the path of a file to write");
        }
        write(file, "", beside -> {});
    }

    private interface Placing {
        void place(Path beside) throws IOException;
    }

    private static void write(Path file, String text, Placing placing) throws IOException {
        Path beside = file.resolveSibling("." + file.getFileName() + ".new");
        try {
            try {
                Files.writeString(beside, text);
                placing.place(beside);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException e) {
            throw FileFailure.ofWriting(file, e);
        }
    }
}
