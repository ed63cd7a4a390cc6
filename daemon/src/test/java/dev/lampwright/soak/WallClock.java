package dev.lampwright.soak;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The wall clock as the daemon sees it, which can be set without setting that of this machine: a library of a few lines of C
 * ({@code clockstep.c}) is preloaded into the daemon. Needs the Debian package {@code gcc}.
 */
final class WallClock {
    private final Path library;
    private final Path offset;
    private final boolean built;

    /**
     * Builds the library.
     *
     * @param folder where to
     */
    WallClock(Path folder) throws IOException {
        library = folder.resolve("clockstep.so");
        offset = folder.resolve("clockstep");
        Path source = folder.resolve("clockstep.c");
        try (InputStream text = WallClock.class.getResourceAsStream("clockstep.c")) {
            Files.copy(text, source, StandardCopyOption.REPLACE_EXISTING);
        }
        built = builds(source);
        Files.write(offset, new byte[Long.BYTES]);
    }

    private boolean builds(Path source) {
        try {
            Process gcc = new ProcessBuilder(
                            "gcc",
                            "-std=gnu11",
                            "-O2",
                            "-Wall",
                            "-shared",
                            "-fPIC",
                            "-o",
                            library.toString(),
                            source.toString())
                    .inheritIO()
                    .start();
            return gcc.waitFor(30, TimeUnit.SECONDS) && gcc.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Whether it can be set. */
    boolean canBeSet() {
        return built;
    }

    /** The environment with which to start the daemon. */
    Map<String, String> environment() {
        return built ? Map.of("LD_PRELOAD", library.toString(), "CLOCKSTEP_FILE", offset.toString()) : Map.of();
    }

    /**
     * Sets it.
     *
     * @param seconds how far it is from now on ahead of this machine's clock, or behind if negative
     */
    void set(long seconds) {
        byte[] bytes = ByteBuffer.allocate(Long.BYTES)
                .order(ByteOrder.nativeOrder())
                .putLong(seconds)
                .array();
        try {
            Files.write(offset, bytes, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
