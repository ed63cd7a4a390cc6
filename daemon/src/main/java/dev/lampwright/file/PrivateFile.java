package dev.lampwright.file;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that only this user may read. */
public final class PrivateFile {
    private static final String POSIX = "posix";

    private PrivateFile() {}

    /**
     * Creates a file with mode 600 and opens it. A device or a pipe is opened as it is, because it stores nothing that could be lost.
     *
     * @param file its path
     * @return a writer for it, in UTF-8
     * @throws java.nio.file.FileAlreadyExistsException if a file exists; it is then left unchanged
     * @throws IOException if it cannot be written
     */
    public static BufferedWriter create(Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            return Files.newBufferedWriter(file, StandardOpenOption.WRITE);
        }
        return new BufferedWriter(Channels.newWriter(
                Files.newByteChannel(file, AtomicFile.NEW, forThisUser(file)), StandardCharsets.UTF_8));
    }

    /**
     * Writes a file with mode 600 completely or not at all, even if the power fails, and replaces what is there: a symbolic link itself, never
     * its target. The file never has another mode, not even for a moment.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws IOException if it cannot be written; the message says what to do, and nothing of the text
     */
    public static void replace(Path file, String text) throws IOException {
        try {
            AtomicFile.place(file, text, PrivateFile::moveOver, forThisUser(file));
        } catch (IOException e) {
            throw FileFailure.ofWriting(file, e);
        }
    }

    private static void moveOver(Path beside, Path file) throws IOException {
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static FileAttribute<?>[] forThisUser(Path file) {
        return file.getFileSystem().supportedFileAttributeViews().contains(POSIX)
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }
}
