package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Child;
import dev.lampwright.testing.PtyController;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The jar with the package's own options on every runtime installed on this machine: it works, and the runtime prints no warning. */
@Timeout(300)
class RuntimesIT {
    private static final Path RUNTIMES = Path.of("/usr/lib/jvm");

    @TempDir
    private Path folder;

    static Stream<Path> runtimes() throws IOException {
        Path own = Path.of(System.getProperty("java.home"), "bin", "java").toRealPath();
        List<Path> all = new ArrayList<>(List.of(own));
        if (Files.isDirectory(RUNTIMES)) {
            try (Stream<Path> installed = Files.list(RUNTIMES)) {
                for (Path each : installed
                        .map(home -> home.resolve("bin/java"))
                        .filter(Files::isExecutable)
                        .toList()) {
                    all.add(each.toRealPath());
                }
            }
        }
        return all.stream().distinct();
    }

    private static List<String> command(Path java, String... arguments) {
        List<String> command =
                new ArrayList<>(List.of(java.toString(), "@../systemd/java.options", "-jar", "target/lampwright.jar"));
        command.addAll(List.of(arguments));
        return command;
    }

    @ParameterizedTest
    @MethodSource("runtimes")
    void worksWithoutAComplaint(Path java) throws IOException, InterruptedException {
        Child version = Child.run(command(java, "--version"));
        assertEquals(0, version.status(), version.output());
        assertTrue(version.output().matches("lampwright [0-9.]+\\R"), version.output());
        Child check = Child.run(command(java, "check", "src/main/resources/dev/lampwright/config/example.toml"));
        assertEquals(0, check.status(), check.output());
        assertTrue(check.output().lines().noneMatch(RuntimesIT::isComplaint), check.output());
        Child demo = Child.run(command(java, "demo", "--no-page", "--seconds", "4", "--colours", "plain"));
        assertEquals(0, demo.status(), demo.output());
        assertTrue(demo.output().lines().noneMatch(RuntimesIT::isComplaint), demo.output());
    }

    /** A serial line needs native code, about which runtimes from Java 24 on may warn. */
    @ParameterizedTest
    @MethodSource("runtimes")
    void reachesASerialLineWithoutAComplaint(Path java) throws IOException, InterruptedException {
        try (PtyController pty = PtyController.pluggedIn(folder)) {
            Child ports = Child.run(command(java, "ports", pty.port().toString()));
            assertEquals(0, ports.status(), ports.output());
            assertTrue(ports.output().contains("firmware 1.0.0"), ports.output());
            assertTrue(ports.output().lines().noneMatch(RuntimesIT::isComplaint), ports.output());
        }
    }

    private static boolean isComplaint(String line) {
        return line.startsWith("WARNING")
                || line.contains("[error]")
                || line.contains("[warning]")
                || line.contains(" WARN ");
    }
}
