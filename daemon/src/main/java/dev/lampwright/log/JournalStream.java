package dev.lampwright.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The journal, as described in systemd.exec(5): {@code JOURNAL_STREAM} contains device and inode of the stream to it. */
final class JournalStream {
    private static final Path STANDARD_ERROR = Path.of("/proc/self/fd/2");

    private JournalStream() {}

    /** Whether the standard error goes to the journal: a process may inherit the variable while its output goes elsewhere. */
    static boolean takesStandardError() {
        String stream = System.getenv("JOURNAL_STREAM");
        return stream != null && isAt(stream, STANDARD_ERROR);
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
