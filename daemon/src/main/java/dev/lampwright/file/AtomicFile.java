package dev.lampwright.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * Files that exist completely or not at all, even if the power fails: the text is written to a temporary file next to it, flushed to the
 * disk, and only then renamed. A symbolic link stays; its target is written.
 */
public final class AtomicFile {
    /** Only for a file that does not exist yet. */
    static final Set<OpenOption> NEW = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);

    private AtomicFile() {}

    /**
     * Writes a file and replaces an existing one, keeping its mode and, as far as this user may, its owner and group.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws IOException if it cannot be written; the message says what to do
     */
    public static void replace(Path file, String text) throws IOException {
        write(file, text, AtomicFile::moveOver);
    }

    private static void moveOver(Path beside, Path target) throws IOException {
        if (Files.exists(target)) {
            passOn(target, beside);
        }
        Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /**
     * Writes a file and replaces an existing one as {@link #replace} does, but never through a symbolic link.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws IOException if it is a symbolic link or cannot be written; the text says what to do
     */
    public static void replaceNoLink(Path file, String text) throws IOException {
        replaceNoLink(file, text, () -> true);
    }

    /** Whether a file is still to be replaced. */
    public interface Condition {
        /**
         * Checks it.
         *
         * @return false if it is not
         * @throws IOException if that cannot be found out
         */
        boolean holds() throws IOException;
    }

    /**
     * Writes a file as {@link #replaceNoLink(Path, String)} does, if a condition holds when the new text is on the disk and nothing is left
     * to do but to rename it.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @param condition for instance that nobody else has changed it
     * @return whether the condition holds; if not, the file is as it was
     * @throws IOException as {@link #replaceNoLink(Path, String)}
     */
    public static boolean replaceNoLink(Path file, String text, Condition condition) throws IOException {
        if (Files.isSymbolicLink(file)) {
            throw new IOException(file + ": is a symbolic link, which is not written through; put a file there");
        }
        boolean[] holds = new boolean[1];
        write(file, text, (beside, target) -> {
            if (Files.isSymbolicLink(file)) {
                throw new IOException("it has become a symbolic link");
            }
            holds[0] = condition.holds();
            if (holds[0]) {
                moveOver(beside, target);
            }
        });
        return holds[0];
    }

    /**
     * Writes a file that does not exist yet.
     *
     * @param file its path
     * @param text what to write, as UTF-8
     * @throws FileAlreadyExistsException if it exists
     * @throws IOException if it cannot be written; the message says what to do
     */
    public static void create(Path file, String text) throws IOException {
        write(file, text, (beside, target) -> Files.move(beside, target));
    }

    /**
     * Checks that a file could be written now; leaves nothing behind.
     *
     * @param file its path
     * @throws IOException if it could not; the message says what to do
     */
    public static void requireWritable(Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            String what = Files.isDirectory(file) ? "is a folder" : "is a device or a pipe";
            throw new IOException(file + ": " + what + "; give the path of a file to write");
        }
        write(file, "", (beside, target) -> {});
    }

    /**
     * Creates a folder, and its parents, for this user only: mode 700, as in the XDG Base Directory Specification.
     *
     * @param folder its path; it may exist
     * @throws IOException if it cannot be created; the message says what to do
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

    /** Puts the temporary file where it belongs. */
    interface Placing {
        void place(Path beside, Path target) throws IOException;
    }

    private static void write(Path file, String text, Placing placing) throws IOException {
        try {
            place(Files.isSymbolicLink(file) ? file.toRealPath() : file, text, placing);
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException e) {
            throw FileFailure.ofWriting(file, e);
        }
    }

    /** Writes a temporary file, created with the given attributes, and has it placed. Leaves nothing beside the target. */
    static void place(Path target, String text, Placing placing, FileAttribute<?>... attributes) throws IOException {
        Path beside = target.resolveSibling("." + target.getFileName() + ".new");
        try {
            writeThrough(beside, text, attributes);
            placing.place(beside, target);
            writeThrough(target.toAbsolutePath().getParent());
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    /** Writes through to the disk. Never writes into what an earlier attempt has left, whatever it is. */
    private static void writeThrough(Path file, String text, FileAttribute<?>... attributes) throws IOException {
        Files.deleteIfExists(file);
        try (FileChannel channel = FileChannel.open(file, NEW, attributes)) {
            ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
    }

    /** Makes a name in a folder durable. Not every system allows opening a folder; the name exists anyway. */
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
            // Only root may give a file away; otherwise it belongs to this user.
        }
        target.setPermissions(attributes.permissions());
    }
}
