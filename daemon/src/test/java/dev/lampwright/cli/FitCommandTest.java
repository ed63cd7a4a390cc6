package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
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
    void aFileThatIsNotRightIsLeftAsItIs() throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), "[strip]\npixels = many\n");
        Run run = Run.of("fit", file.toString());
        assertEquals(1, run.status(), run.err());
        assertTrue(run.err().startsWith(file + ":2: column 10: \"many\" is not a value"), run.err());
        assertEquals("", run.out());
        assertEquals("[strip]\npixels = many\n", Files.readString(file));
    }

    @Test
    void aFileThatCannotBeWrittenIsToldBeforeAnythingIsAsked() {
        assertRefused("is a folder; give the path of a file to write", folder);
        assertRefused(
                "its folder does not exist; give the path of a file to write",
                folder.resolve("none").resolve("alder.toml"));
    }
}
