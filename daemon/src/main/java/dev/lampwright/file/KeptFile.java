package dev.lampwright.file;

import dev.lampwright.upkeep.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.function.Consumer;
import org.slf4j.Logger;

/**
 * A file that outlasts the process. A damaged or foreign one is renamed, and failed writes are retried; either is logged once. For one
 * thread at a time.
 */
public final class KeptFile {
    /** The maximum length of a kept file, in bytes. */
    public static final long MOST_BYTES = 1 << 20;

    private static final String SET_ASIDE = ".damaged";

    private final Path file;
    private final Logger log;
    private final String what;
    private final String lost;
    private final Trouble trouble;

    /**
     * Touches nothing yet.
     *
     * @param file its path; its folder need not exist
     * @param log receives problems
     * @param what what is kept in it, for example "what is asked for"
     * @param lost what is forgotten if the file cannot be used, for example "what was asked for before"
     */
    public KeptFile(Path file, Logger log, String what, String lost) {
        this.file = file;
        this.log = log;
        this.what = what;
        this.lost = lost;
        trouble = new Trouble(log);
    }

    /**
     * Reads what an earlier run has kept, if the file exists. A damaged file is renamed and reported in one line.
     *
     * @param reader receives the text; if it is not valid, throws an {@code IllegalArgumentException} without having changed anything, with
     *     a message to follow the file's name
     */
    public void restore(Consumer<String> reader) {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try {
            reader.accept(read(file));
        } catch (IllegalArgumentException | IOException e) {
            setAside(e.getMessage());
        }
    }

    /**
     * Reads such a file.
     *
     * @param file its path
     * @return its text
     * @throws IOException if it cannot be read; the message says why and is meant to follow the file's name
     */
    public static String read(Path file) throws IOException {
        RegularFile.require(file);
        try {
            if (Files.size(file) <= MOST_BYTES) {
                return Files.readString(file);
            }
        } catch (IOException e) {
            throw new IOException(FileFailure.whyNotRead(file, e), e);
        }
        throw new IOException("is longer than " + MOST_BYTES + " bytes");
    }

    private void setAside(String why) {
        Path aside = file.resolveSibling(file.getFileName() + SET_ASIDE);
        try {
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            log.warn("{}: {}; {} is forgotten, and the file is now {}", file, why, lost, aside);
        } catch (IOException e) {
            log.warn("{}: {}; {} is forgotten, and the file cannot be moved away; remove it", file, why, lost);
        }
    }

    /**
     * Writes the whole file, or leaves the existing one unchanged.
     *
     * @param text what to write
     * @param nowNanos the monotonic time, in ns
     * @return whether it is written; if not, the log says why
     */
    public boolean write(String text, long nowNanos) {
        try {
            AtomicFile.makeFolder(file.toAbsolutePath().getParent());
            AtomicFile.replace(file, text);
            trouble.ends(file + ": " + what + " is kept again");
            return true;
        } catch (IOException e) {
            String why = e.getMessage().replaceFirst("(?s); .*", "");
            trouble.begins(
                    why + "; let this user write there, or set STATE_DIRECTORY; until then " + what + " is not kept",
                    nowNanos);
            return false;
        }
    }
}
