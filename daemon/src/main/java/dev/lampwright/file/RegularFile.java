package dev.lampwright.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Prevents endless waits when reading a file: a named pipe without a writer, or a device, may never end. */
public final class RegularFile {
    private RegularFile() {}

    /**
     * Refuses something that exists and is neither a file nor a link to one.
     *
     * @param file its path; it need not exist
     * @throws IOException if it is a named pipe, a device, a socket or a folder; the message says so and is meant to follow the file's name
     */
    public static void require(Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new IOException(Files.isDirectory(file) ? "is a folder" : "is a pipe or a device, not a file");
        }
    }
}
