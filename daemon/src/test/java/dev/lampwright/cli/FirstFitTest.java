package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which file runs, and which one the page writes. */
class FirstFitTest {
    @TempDir
    private Path folder;

    @Test
    void aFileThatExistsComesFirst() throws IOException {
        Path given = Files.writeString(folder.resolve("alder.toml"), "");
        assertEquals(given, FirstFit.file(given, Map.of("STATE_DIRECTORY", "/var/lib/lampwright")));
    }

    @Test
    void aServiceWritesWhereItMay() {
        Path given = folder.resolve("alder.toml");
        assertEquals(
                Path.of("/var/lib/lampwright/alder.toml"),
                FirstFit.file(given, Map.of("STATE_DIRECTORY", "/var/lib/lampwright:/var/lib/other")));
        assertEquals(given, FirstFit.file(given, Map.of()));
    }
}
