package dev.lampwright.cli;

import dev.lampwright.file.FileFailure;
import dev.lampwright.file.FileMark;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Notices that a file has changed and has come to rest, by looking at it now and then. */
final class FileWatch {
    private final Path file;
    private String taken;
    private String seen;
    private Optional<String> missing = Optional.empty();

    /**
     * Begins with the file as it is.
     *
     * @param file the file, which may come and go
     */
    FileWatch(Path file) {
        this.file = file;
        taken = mark();
        seen = taken;
    }

    /**
     * Looks at the file.
     *
     * @return true once for each change, when the file looks the same as the time before; never while it is not there
     */
    boolean changed() {
        String now = mark();
        boolean atRest = now.equals(seen);
        seen = now;
        if (!atRest || now.equals(taken) || now.isEmpty()) {
            return false;
        }
        taken = now;
        return true;
    }

    /**
     * Why the file cannot be looked at, once two looks in a row have failed.
     *
     * @return to follow the file's name; empty while it is there, or has just gone
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
