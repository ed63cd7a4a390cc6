package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FitCommandTest {
    @TempDir
    private Path folder;

    private static void assertRefused(String complaint, Path file) {
        assertEquals(new Run(1, "", file + ": " + complaint + System.lineSeparator()), Run.of("fit", file.toString()));
    }

    @Test
    void aFileThatCannotBeWrittenIsToldBeforeAnythingIsAsked() {
        assertRefused("is a folder; give the path of a file to write", folder);
        assertRefused(
                "its folder is not there; give the path of a file to write",
                folder.resolve("none").resolve("alder.toml"));
    }
}
