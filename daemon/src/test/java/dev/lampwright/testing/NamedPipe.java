package dev.lampwright.testing;

import java.nio.file.Path;
import java.util.List;

/** A pipe that has a name and that nobody writes to: who opens it to read waits without end. */
public final class NamedPipe {
    private NamedPipe() {}

    /**
     * Makes one.
     *
     * @param path where nothing is yet
     * @return the same path
     */
    public static Path at(Path path) {
        Tool.run(List.of("mkfifo", path.toString()), "coreutils");
        return path;
    }
}
