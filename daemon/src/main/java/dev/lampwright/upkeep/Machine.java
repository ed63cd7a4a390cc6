package dev.lampwright.upkeep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The computer that this runs on. */
public final class Machine {
    /** The files with its host name: the kernel's, which a service may not be allowed to see, and the one set at boot. */
    private static final List<Path> NAMES = List.of(Path.of("/proc/sys/kernel/hostname"), Path.of("/etc/hostname"));

    private Machine() {}

    /**
     * Its name. The address is not resolved, because that may need a name server.
     *
     * @return its host name; empty if it is unknown
     */
    public static String name() {
        return NAMES.stream().flatMap(path -> read(path).stream()).findFirst().orElse("");
    }

    private static Optional<String> read(Path path) {
        try {
            return Files.readString(path)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty())
                    .findFirst();
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
