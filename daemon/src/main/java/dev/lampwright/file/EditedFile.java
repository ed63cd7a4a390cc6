package dev.lampwright.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * A user's file that is read, changed, and written back: earlier versions stay next to it, as {@code NAME.old-1}, {@code NAME.old-2} and so
 * on, and are never overwritten; what somebody else has written in the meantime is not lost.
 */
public final class EditedFile {
    private static final long MOST_BYTES = 1 << 20;
    private static final int MOST_OLD = 10_000;

    private final Path file;
    private String text;

    private EditedFile(Path file, String text) {
        this.file = file;
        this.text = text;
    }

    /**
     * Reads a file.
     *
     * @param file its path, or that of a symbolic link to it
     * @return the file and its text
     * @throws IOException if it does not exist, is not a regular file, is longer than 1 MiB, is not UTF-8 or cannot be read; the message
     *     says which file, why and what to do
     */
    public static EditedFile read(Path file) throws IOException {
        return new EditedFile(file, textOf(file));
    }

    private static String textOf(Path file) throws IOException {
        try {
            RegularFile.require(file);
        } catch (IOException e) {
            throw new IOException(file + ": " + e.getMessage() + "; give the path of a file", e);
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new IOException("it is longer than 1 MiB");
            }
            return Files.readString(file);
        } catch (IOException e) {
            throw new IOException(
                    file + ": " + FileFailure.whyNotRead(file, e) + "; give the path of a file that can be read", e);
        }
    }

    /**
     * Its text as last read or written.
     *
     * @return every character in it
     */
    public String text() {
        return text;
    }

    /**
     * Replaces the text.
     *
     * @param next the whole text
     * @return where the previous file is kept
     * @throws IOException if it has been changed since it was read, or cannot be written; it is then unchanged. The message says what to do
     */
    public Path replace(String next) throws IOException {
        requireUnchanged();
        Path old = keep();
        write(next);
        return old;
    }

    /**
     * Replaces the text and keeps no copy, for use when one has just been kept.
     *
     * @param next the whole text
     * @throws IOException as {@link #replace}
     */
    public void replaceAgain(String next) throws IOException {
        requireUnchanged();
        write(next);
    }

    private void write(String next) throws IOException {
        AtomicFile.replace(file, next);
        text = next;
    }

    private void requireUnchanged() throws IOException {
        if (!textOf(file).equals(text)) {
            throw new IOException(
                    file + ": was changed by somebody else in the meantime, and stays as it is; run the command again");
        }
    }

    private Path keep() throws IOException {
        for (int number = 1; number < MOST_OLD; number++) {
            Path old = file.resolveSibling(file.getFileName() + ".old-" + number);
            if (!Files.exists(old) && copyTo(old)) {
                return old;
            }
        }
        throw new IOException(file + ": " + MOST_OLD + " old ones are next to it; move some away");
    }

    /** Copies the file, unless a file with that name exists. */
    private boolean copyTo(Path old) throws IOException {
        try {
            Files.copy(file, old, StandardCopyOption.COPY_ATTRIBUTES);
            try (FileChannel channel = FileChannel.open(old, StandardOpenOption.READ)) {
                channel.force(true);
            }
            return true;
        } catch (FileAlreadyExistsException e) {
            return false;
        } catch (IOException e) {
            Files.deleteIfExists(old);
            throw FileFailure.ofWriting(old, e);
        }
    }
}
