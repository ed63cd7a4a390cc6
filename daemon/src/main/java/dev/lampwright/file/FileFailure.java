package dev.lampwright.file;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Why a file cannot be written or read, in words for the user. */
public final class FileFailure {
    private FileFailure() {}

    /**
     * Words that a file cannot be written.
     *
     * @param file its path
     * @param e the failure
     * @return the same, with a message of one line: the file, why, and what to do
     */
    public static IOException ofWriting(Path file, IOException e) {
        return new IOException(file + ": " + whyNotWritten(file, e), e);
    }

    /**
     * Words that a folder cannot be created.
     *
     * @param folder its path
     * @param e the failure
     * @return the same, with a message of one line: the folder, why, and what to do
     */
    static IOException ofMakingFolder(Path folder, IOException e) {
        String why = e instanceof AccessDeniedException
                ? "cannot be created by this user"
                : e instanceof FileAlreadyExistsException ? "is not a folder" : "cannot be created: " + reason(e);
        return new IOException(folder + ": " + why + "; create this folder for the user who runs lampwright", e);
    }

    /**
     * Words why a file cannot be read.
     *
     * @param file its path
     * @param e the failure
     * @return text to follow the file's name, without what to do
     */
    public static String whyNotRead(Path file, IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (e instanceof AccessDeniedException) {
            return "cannot be read by this user";
        }
        if (e instanceof CharacterCodingException) {
            return "is not UTF-8 text";
        }
        return Files.isDirectory(file) ? "is a folder" : "cannot be read: " + reason(e);
    }

    private static String whyNotWritten(Path file, IOException e) {
        if (Files.isDirectory(file)) {
            return "is a folder; give the path of a file to write";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "already exists; choose another path, or move it away";
        }
        if (e instanceof NoSuchFileException) {
            boolean folder = Files.isDirectory(file.toAbsolutePath().getParent());
            return (folder ? "no file can be created there" : "its folder does not exist")
                    + "; give the path of a file to write";
        }
        if (e instanceof AccessDeniedException) {
            return "cannot be written by this user; give a file in a folder that you may write to";
        }
        return "cannot be written: " + reason(e) + "; give another path";
    }

    /** The system's own text, such as <em>No space left on device</em>. */
    private static String reason(IOException e) {
        String reason = e instanceof FileSystemException failure ? failure.getReason() : e.getMessage();
        return reason == null ? "the system does not say why" : reason;
    }
}
