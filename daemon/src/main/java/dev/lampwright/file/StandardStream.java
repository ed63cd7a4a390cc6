package dev.lampwright.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a process's standard streams go. */
public final class StandardStream {
    /** File descriptor of standard output: POSIX.1-2017, {@code unistd.h}. */
    public static final int OUTPUT = 1;
    /** File descriptor of standard error. */
    public static final int ERROR = 2;

    private StandardStream() {}

    /**
     * Whether a stream is shown to somebody immediately.
     *
     * @param descriptor its number
     * @return true if it goes to a terminal; false if that cannot be determined
     */
    public static boolean isTerminal(int descriptor) {
        try {
            String target = Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor))
                    .toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
        } catch (IOException e) {
            return false;
        }
    }
}
