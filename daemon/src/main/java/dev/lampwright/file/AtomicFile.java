package dev.lampwright.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that are there whole or not at all, also after the power has failed: they are on the disk before they get their name. */
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

    /**
     * Makes a folder, and those that it is in, for this user alone: mode 700, as the XDG Base Directory Specification has it.
     *
     * @param folder its path; it may be there
     * @throws IOException if it cannot be made; the text says what to do
     */
    public static void makeFolder(Path folder) throws IOException {
        boolean posix = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
        try {
            if (posix && !Files.isDirectory(folder)) {
                Files.createDirectories(
                        folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
            } else {
                Files.createDirectories(folder);
            }
        } catch (IOException e) {
            throw FileFailure.ofMakingFolder(folder, e);
        }
    }

    private static void writeThrough(Path file, String text) throws IOException {
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
            ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
    }

    /** The name of a file is on the disk once its folder is. */
    private static void writeThrough(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private interface Placing {
        void place(Path beside) throws IOException;
    }

    private static void write(Path file, String text, Placing placing) throws IOException {
        Path beside = file.resolveSibling("." + file.getFileName() + ".new");
        try {
            try {
                writeThrough(beside, text);
                placing.place(beside);
                writeThrough(file.toAbsolutePath().getParent());
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
