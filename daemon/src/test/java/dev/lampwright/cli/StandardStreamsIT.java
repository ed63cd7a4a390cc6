package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigFile;
import dev.lampwright.testing.Child;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** Output in the locale that a service or a remote shell has when nobody chose one. */
class StandardStreamsIT {
    @TempDir
    private Path folder;

    private static Child in(String locale, Class<?> main, String... arguments)
            throws IOException, InterruptedException {
        return Child.run(List.of("env", "LC_ALL=" + locale), List.of(), main, arguments);
    }

    @Test
    void theCLocaleHasAllLetters() throws IOException, InterruptedException {
        Path file = folder.resolve("alder.toml");
        try (InputStream in = ConfigFile.class.getResourceAsStream("example.toml")) {
            Files.copy(in, file);
        }
        Child child = in("C", Lampwright.class, "plan", file.toString());
        assertTrue(child.output().contains("÷") && child.output().contains("→"), child.output());
        assertEquals(in("C.UTF-8", Lampwright.class, "plan", file.toString()), child);
    }

    /** Logs a line. */
    static final class Probe {
        private Probe() {}

        public static void main(String[] args) {
            LoggerFactory.getLogger(Probe.class).info("the bed is at 60 °C");
        }
    }

    @Test
    void soHasTheLog() throws IOException, InterruptedException {
        Child child = in("C", Probe.class);
        assertTrue(child.output().endsWith("the bed is at 60 °C" + System.lineSeparator()), child.output());
    }
}
