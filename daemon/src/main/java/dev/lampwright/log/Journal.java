package dev.lampwright.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The journal, as systemd.exec(5) tells a service of it: {@code JOURNAL_STREAM} holds device and inode of the stream to it. */
public final class Journal {
    private static final Path STANDARD_ERROR = Path.of("/proc/self/fd/2");

    private Journal() {}

    /**
     * Whether the standard error goes to the journal.
     *
     * @param stream {@code $JOURNAL_STREAM}, empty if there is none. It may be inherited by a process whose output goes elsewhere
     * @return true if it is the very stream
     */
    public static boolean takesStandardError(String stream) {
        return isAt(stream, STANDARD_ERROR);
    }

    static boolean isAt(String stream, Path open) {
        try {
            return !stream.isEmpty()
                    && stream.equals(Files.getAttribute(open, "unix:dev") + ":" + Files.getAttribute(open, "unix:ino"));
        } catch (IOException | UnsupportedOperationException e) {
            return false;
        }
    }
}
