package dev.lampwright.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AtomicFileTest {
    @TempDir
    private Path folder;

    private static void assertRefused(String complaint, Path file) {
        IOException e = assertThrows(IOException.class, () -> AtomicFile.requireWritable(file));
        assertEquals(file + ": " + complaint + "; give the path of a file to write", e.getMessage());
    }

    @Test
    void whatCanBeWrittenIsLeftAsItIs() throws IOException {
        Path file = folder.resolve("alder.toml");
        AtomicFile.requireWritable(file);
        try (var files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
        Files.writeString(file, "mine");
        AtomicFile.requireWritable(file);
        assertEquals("mine", Files.readString(file));
    }

    @Test
    void whatCannotBeWritten() {
        assertRefused("is a folder", folder);
        assertRefused("is a folder", Path.of("/"));
        assertRefused("is a device or a pipe", Path.of("/dev/null"));
        assertRefused("its folder does not exist", folder.resolve("none").resolve("alder.toml"));
    }
}
