package dev.lampwright.file;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/** Files that only this user may read. */
public final class PrivateFile {
    private static final String POSIX = "posix";
    private static final Set<OpenOption> NEW = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);

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
        return new BufferedWriter(
                Channels.newWriter(Files.newByteChannel(file, NEW, forThisUser(file)), StandardCharsets.UTF_8));
    }

    private static FileAttribute<?>[] forThisUser(Path file) {
        return file.getFileSystem().supportedFileAttributeViews().contains(POSIX)
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }
}
