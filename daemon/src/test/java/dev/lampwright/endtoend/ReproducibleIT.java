package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Limited;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same commit gives the same bytes, whatever the time, language and time zone of the build. Compiled classes are reused; only the
 * packaging is built again: dates, the order of files, and texts that depend on the builder.
 */
@Timeout(300)
class ReproducibleIT {
    /** A test class writes the handbook's HTML. */
    private static final List<String> COMPILED = List.of("/target/classes/", "/target/test-classes/");

    private static final Path ROOT = Path.of("").toAbsolutePath().getParent();

    @TempDir
    private Path copy;

    @Test
    void jarAndPackageAreTheSameWhenBuiltAgain() throws IOException, InterruptedException {
        for (String part :
                List.of("pom.xml", "README.md", "DEVELOPERS.md", "daemon", "protocol", "systemd", "firmware-notes")) {
            copyTree(ROOT.resolve(part));
        }
        List<String> command = List.of(
                "mvn",
                "-q",
                "-o",
                "package",
                "-Dmaven.test.skip",
                "-Dmaven.main.skip",
                "-Dspotless.check.skip",
                "-Denforcer.skip");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(copy.toFile())
                .redirectErrorStream(true)
                .redirectOutput(copy.resolve("said").toFile());
        builder.environment().put("LC_ALL", "C");
        builder.environment().put("TZ", "Pacific/Chatham");
        Process build = Limited.start(builder, Duration.ofMinutes(4));
        assertEquals(0, build.waitFor(), () -> text(copy.resolve("said")));
        assertSame("lampwright.jar");
        assertSame(debianPackage());
    }

    private void assertSame(String name) throws IOException {
        assertEquals(
                -1,
                Files.mismatch(
                        Path.of("target", name), copy.resolve("daemon/target").resolve(name)),
                name);
    }

    private static String debianPackage() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("target"))) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith("_all.deb"))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("target has no package; run mvn package"));
        }
    }

    /** Sources and compiled classes, but nothing else from {@code target}. */
    private void copyTree(Path from) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(ReproducibleIT::counts)
                    .toList()) {
                Path to = copy.resolve(ROOT.relativize(file));
                Files.createDirectories(to.getParent());
                Files.copy(file, to);
                to.toFile().setExecutable(Files.isExecutable(file), false);
            }
        }
    }

    private static boolean counts(Path file) {
        String path = "/" + ROOT.relativize(file);
        return !path.contains("/target/") || COMPILED.stream().anyMatch(path::contains);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
