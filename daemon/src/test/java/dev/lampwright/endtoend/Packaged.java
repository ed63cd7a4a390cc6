package dev.lampwright.endtoend;

import dev.lampwright.testing.Child;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Figures of the package that need no run. */
final class Packaged {
    private static final double MIB = 1048576;

    private Packaged() {}

    /** Prints sizes, and the service's exposure. */
    static void print() throws IOException, InterruptedException {
        try (Stream<Path> files = Files.list(Path.of("target"))) {
            for (Path file : files.filter(Packaged::isMeasured).sorted().toList()) {
                System.out.printf(Locale.ROOT, "%s: %.1f MiB%n", file.getFileName(), Files.size(file) / MIB);
            }
        }
        Child said = Child.run(List.of(
                "systemd-analyze",
                "security",
                "--no-pager",
                "--offline=true",
                Path.of("..", "systemd", "lampwright.service").toString()));
        said.output().lines().filter(line -> line.contains("Overall exposure")).forEach(System.out::println);
    }

    private static boolean isMeasured(Path file) {
        String name = file.getFileName().toString();
        return name.equals("lampwright.jar") || name.endsWith("_all.deb");
    }
}
