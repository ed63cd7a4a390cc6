package dev.lampwright.cli;

import dev.lampwright.file.FileFailure;
import dev.lampwright.file.FileMark;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Notices that a file has changed and settled, by checking it periodically. */
final class FileWatch {
    private final Path file;
    private final boolean mayBeMissing;
    private String taken;
    private String seen;
    private Optional<String> missing = Optional.empty();

    /**
     * Starts with the file as it is.
     *
     * @param file the file, which may appear and disappear
     */
    FileWatch(Path file) {
        this(file, false);
    }

    private FileWatch(Path file, boolean mayBeMissing) {
        this.file = file;
        this.mayBeMissing = mayBeMissing;
        taken = mark();
        seen = taken;
    }

    /**
     * Watches a file that need not exist.
     *
     * @param file the file; that it appears or disappears is a change like any other
     */
    static FileWatch ofOptional(Path file) {
        return new FileWatch(file, true);
    }

    /**
     * Checks the file.
     *
     * @return true once for each change, once the file looks the same in two checks; never while a file that must exist does not
     */
    boolean changed() {
        String now = mark();
        boolean atRest = now.equals(seen);
        seen = now;
        if (!atRest || now.equals(taken) || (now.isEmpty() && !mayBeMissing)) {
            return false;
        }
        taken = now;
        return true;
    }

    /**
     * Why the file cannot be checked, after two consecutive failures.
     *
     * @return text to follow the file's name; empty while it exists, or has only just disappeared
     */
    Optional<String> missing() {
        return seen.isEmpty() ? missing : Optional.empty();
    }

    private String mark() {
        try {
            return FileMark.of(file);
        } catch (IOException e) {
            missing = seen == null || !seen.isEmpty() ? Optional.empty() : Optional.of(FileFailure.whyNotRead(file, e));
            return "";
        }
    }
}
