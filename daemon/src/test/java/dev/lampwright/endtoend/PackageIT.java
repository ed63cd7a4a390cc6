package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The Debian package, by {@code systemd/check-package}: it prints one line for each check. It needs root, or sudo. */
@Timeout(900)
class PackageIT {
    @Test
    void livesAWholeLifeInABareDebian() throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        if (!System.getProperty("user.name").equals("root")) {
            command.add("sudo");
        }
        command.addAll(List.of("../systemd/check-package", debianPackage().toString()));
        Process check = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(Redirect.INHERIT)
                .start();
        try {
            assertEquals(0, check.waitFor(), "systemd/check-package has failed; its output says why");
        } finally {
            check.destroy();
        }
    }

    private static Path debianPackage() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("target"))) {
            return files.filter(file -> file.toString().endsWith("_all.deb"))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("target has no package; run mvn package"));
        }
    }
}
