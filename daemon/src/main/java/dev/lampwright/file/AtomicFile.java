package dev.lampwright.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * Files that are there whole or not at all, even if the power fails: the text goes to a file beside it, to the disk, and only then to its
 * name. A symbolic link stays; the file that it leads to is written.
 */
public final class AtomicFile {
    private AtomicFile() {}

    /**
     * Writes a file and replaces an existing one, whose mode and, as far as this user may, owner and group it keeps.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws IOException if it cannot be written; the text says what to do
     */
    public static void replace(Path file, String text) throws IOException {
        write(file, text, (beside, target) -> {
            if (Files.exists(target)) {
                passOn(target, beside);
            }
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        });
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
        write(file, text, (beside, target) -> Files.move(beside, target));
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
        write(file, "", (beside, target) -> {});
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

    private interface Placing {
        void place(Path beside, Path target) throws IOException;
    }

    private static void write(Path file, String text, Placing placing) throws IOException {
        try {
            Path target = Files.isSymbolicLink(file) ? file.toRealPath() : file;
            Path beside = target.resolveSibling("." + target.getFileName() + ".new");
            try {
                writeThrough(beside, text);
                placing.place(beside, target);
                writeThrough(target.toAbsolutePath().getParent());
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException e) {
            throw FileFailure.ofWriting(file, e);
        }
    }

    /** Writes to the disk itself. What an attempt before has left is not written into, whatever it is. */
    private static void writeThrough(Path file, String text) throws IOException {
        Files.deleteIfExists(file);
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
    }

    /** Makes a name in a folder last. Not every system lets a folder be opened; the name is there all the same. */
    private static void writeThrough(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            return;
        }
    }

    /** Gives a file the mode of another and, as far as this user may, its owner and group. */
    static void passOn(Path from, Path to) throws IOException {
        PosixFileAttributeView source = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        PosixFileAttributeView target =
                Files.getFileAttributeView(to, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
        if (source == null || target == null) {
            return;
        }
        PosixFileAttributes attributes = source.readAttributes();
        try {
            target.setGroup(attributes.group());
            target.setOwner(attributes.owner());
        } catch (IOException e) {
            // Only root may give a file away; it is this user's then.
        }
        target.setPermissions(attributes.permissions());
    }
}
