package dev.lampwright.testing;

import java.nio.file.Path;
import java.util.List;

/** A named pipe that nobody writes to: opening it for reading waits for ever. */
public final class NamedPipe {
    private NamedPipe() {}

    /**
     * Creates one.
     *
     * @param path a path without a file
     * @return the same path
     */
    public static Path at(Path path) {
        Tool.run(List.of("mkfifo", path.toString()), "coreutils");
        return path;
    }
}
