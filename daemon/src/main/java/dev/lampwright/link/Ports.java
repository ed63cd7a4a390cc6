package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The serial ports of this machine, as Linux shows them below {@code /sys/class/tty}. On other systems none are visible. */
public final class Ports {
    /** The maximum number of levels from a port up to its USB device. */
    private static final int LEVELS_TO_DEVICE = 4;
    /** The kernel's type for a built-in port that does not exist. */
    private static final String NO_UART = "0";

    private final Path root;

    private Ports(Path root) {
        this.root = root;
    }

    /**
     * Lists the ports.
     *
     * @return the existing ones, by name
     */
    public static List<Port> list() {
        return list(Path.of("/"));
    }

    /**
     * What prevents the user of this process from opening a port.
     *
     * @param port an existing port
     * @return the missing permission, with the command that fixes it; empty if none is
     */
    public static Optional<Phrase> obstacle(Port port) {
        Path node = Path.of(port.path());
        if (Files.isReadable(node) && Files.isWritable(node)) {
            return Optional.empty();
        }
        String user = System.getProperty("user.name", "USER");
        return Optional.of(OpenFailure.noPermission(port.path(), OpenFailure.group(node), user));
    }

    /** Lists the ports below another root. */
    static List<Port> list(Path root) {
        Ports ports = new Ports(root);
        return entries(root.resolve("sys/class/tty"))
                .filter(ports::isPort)
                .map(ports::port)
                .sorted((one, other) -> one.path().compareTo(other.path()))
                .toList();
    }

    /** A hint about the existing ports, for somebody who named another one. */
    static String advice() {
        String names = names();
        return names.isEmpty()
                ? "no serial ports found: plug the controller in"
                : "plug the controller in, or choose one of: " + names;
    }

    /** For somebody who named a port that does not exist. */
    static Phrase missing(String name) {
        String names = names();
        return Phrase.of(
                names.isEmpty() ? "port_missing" : "port_missing_others",
                "no port " + name + ": " + advice(),
                "port",
                name,
                "others",
                names);
    }

    private static String names() {
        return list().stream()
                .map(port -> port.stablePath().isEmpty() ? port.path() : port.stablePath())
                .collect(Collectors.joining(", "));
    }

    private boolean isPort(Path tty) {
        return Files.exists(tty.resolve("device"))
                && !read(tty.resolve("type")).equals(NO_UART)
                && Files.exists(root.resolve("dev").resolve(tty.getFileName()));
    }

    private Port port(Path tty) {
        Path node = root.resolve("dev").resolve(tty.getFileName());
        return new Port(node.toString(), stablePath(node), description(tty));
    }

    private String stablePath(Path node) {
        return entries(root.resolve("dev/serial/by-id"))
                .filter(link -> real(link).equals(real(node)))
                .map(Path::toString)
                .findFirst()
                .orElse("");
    }

    private static String description(Path tty) {
        Optional<Path> at = real(tty.resolve("device"));
        for (int level = 0; at.isPresent() && level < LEVELS_TO_DEVICE; level++) {
            String product = read(at.get().resolve("product"));
            if (!product.isEmpty()) {
                return (read(at.get().resolve("manufacturer")) + " " + product).strip();
            }
            at = Optional.ofNullable(at.get().getParent());
        }
        return "";
    }

    private static Stream<Path> entries(Path directory) {
        try (Stream<Path> entries = Files.list(directory)) {
            return entries.toList().stream();
        } catch (IOException e) {
            return Stream.empty();
        }
    }

    private static Optional<Path> real(Path path) {
        try {
            return Optional.of(path.toRealPath());
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            return "";
        }
    }
}
