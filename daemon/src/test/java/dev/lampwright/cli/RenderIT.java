package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Child;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures in a separate process, with a display named that does not exist. */
class RenderIT {
    @TempDir
    private Path folder;

    /** The classes that look for fonts and displays, and fail if there are none, are not even loaded. */
    @ParameterizedTest
    @ValueSource(strings = {"held.png", "held.gif"})
    void needsNeitherDisplayNorFonts(String name) throws IOException, InterruptedException {
        Path picture = folder.resolve(name);
        Child child = Child.run(
                List.of("env", "DISPLAY=:977"),
                List.of("-Xlog:class+load"),
                Lampwright.class,
                "render",
                "--look",
                "held",
                "--seconds",
                "1",
                "--out",
                picture.toString());
        assertEquals(0, child.status(), child.output());
        assertTrue(Files.size(picture) > 500, "a picture is there");
        assertTrue(child.output().contains("dev.lampwright.tool.picture.Paper "), "loaded classes are told");
        for (String needy : List.of("sun.font.SunFontManager ", "sun.awt.X11.XToolkit ", "sun.awt.X11FontManager ")) {
            assertFalse(child.output().contains(needy), needy);
        }
    }

    @Test
    void theUsualNameIsThatOfTheLook() throws IOException, InterruptedException {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        Child child = Child.run(List.of(
                "env",
                "-C",
                folder.toString(),
                java.toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Lampwright.class.getName(),
                "render",
                "--look",
                "idle",
                "--seconds",
                "1"));
        assertEquals(new Child(0, "idle.png: 1 s, 60 pixels" + System.lineSeparator()), child);
        assertTrue(Files.size(folder.resolve("idle.png")) > 500, "a picture is there");
    }
}
