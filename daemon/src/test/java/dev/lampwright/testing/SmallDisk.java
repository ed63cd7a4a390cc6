package dev.lampwright.testing;

import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * A small file system in memory that can be filled, if this user may mount one. Otherwise the recording goes to {@code /dev/full}, which is
 * always full, and the log to an ordinary file.
 */
public final class SmallDisk implements AutoCloseable {
    private static final int CHUNK = 1 << 16;

    private final Path folder;
    private final boolean mounted;

    /**
     * Mounts it.
     *
     * @param folder where
     */
    public SmallDisk(Path folder) throws IOException {
        this.folder = Files.createDirectory(folder);
        mounted = run("mount", "-t", "tmpfs", "-o", "size=8m", "lampwright-test", folder.toString());
    }

    private static boolean run(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Whether it can be filled and emptied. */
    public boolean canBeFilled() {
        return mounted;
    }

    /** The file for the log. */
    public Path log() {
        return folder.resolve("log");
    }

    /** The file for the recording. */
    public Path recording() {
        return mounted ? folder.resolve("recording") : Path.of("/dev/full");
    }

    /** Fills it to the last byte. */
    public void fill() {
        byte[] chunk = new byte[CHUNK];
        try (OutputStream ballast = Files.newOutputStream(ballast())) {
            for (int size = CHUNK; size > 0; size /= 2) {
                fillWith(ballast, chunk, size);
            }
        } catch (IOException e) {
            // Full, including what the stream still held.
        }
    }

    private static void fillWith(OutputStream ballast, byte[] chunk, int size) {
        try {
            while (true) {
                ballast.write(chunk, 0, size);
            }
        } catch (IOException e) {
            // There is no longer room for this much.
        }
    }

    /** Makes room again: removes the ballast, and what the daemon has recorded so far. */
    public void empty() {
        try {
            Files.deleteIfExists(ballast());
            if (Files.isRegularFile(recording())) {
                try (RandomAccessFile file = new RandomAccessFile(recording().toFile(), "rw")) {
                    file.setLength(0);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Path ballast() {
        return folder.resolve("ballast");
    }

    /** Unmounts it. */
    @Override
    public void close() {
        if (mounted) {
            run("umount", folder.toString());
        }
    }
}
