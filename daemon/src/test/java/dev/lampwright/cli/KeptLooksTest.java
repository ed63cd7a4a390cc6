package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whether commands read the looks that the page has saved apart from the configuration file, as the daemon does. */
class KeptLooksTest {
    private static final String HOME = "user.home";

    @TempDir
    private Path folder;

    private String home;
    private Path file;
    private Path looks;

    @BeforeEach
    void write() throws IOException {
        home = System.setProperty(HOME, folder.toString());
        file = folder.resolve("alder.toml");
        Files.writeString(file, BenchRig.FILE.formatted(1883, 30, ""));
        looks = StateFile.looks(file, Map.of(), folder).get(0);
        Files.createDirectories(looks.getParent());
        Files.writeString(
                looks,
                "[looks.mine]\nlayers = [{ colour = \"white\" }]\n[looks.waiting]\nlayers = [{ colour = \"red\" }]\n");
    }

    @AfterEach
    void goHome() {
        System.setProperty(HOME, home);
    }

    @Test
    void checkSaysWhichLooksAreFromAnotherFile() {
        Run check = Run.of("check", file.toString());
        assertEquals(0, check.status(), check.err());
        assertTrue(check.out().contains("; waiting, mine from " + looks + ";"), check.out());
        Run json = Run.of("check", "--json", file.toString());
        assertTrue(json.out().contains("\"mine\":\"" + looks + "\""), json.out());
    }

    @Test
    void renderAndPlanDrawThem() throws IOException {
        Path picture = folder.resolve("mine.png");
        Run render = Run.of("render", file.toString(), "--look", "mine", "--out", picture.toString(), "--seconds", "1");
        assertEquals(0, render.status(), render.err());
        assertTrue(Files.size(picture) > 0);
        assertTrue(render.err().contains("waiting, mine from " + looks), render.err());
        assertTrue(Run.of("plan", file.toString()).err().contains("waiting, mine from " + looks));
        Files.delete(looks);
        assertEquals(
                2,
                Run.of("render", file.toString(), "--look", "mine", "--out", picture.toString())
                        .status());
    }

    @Test
    void whatDoesNotFitAnyMoreIsLeftOutAndNamed() throws IOException {
        Files.writeString(looks, "[looks.mine]\nlayers = [{ zone = \"gone\", colour = \"red\" }]\n");
        Run plan = Run.of("plan", file.toString());
        assertTrue(plan.err().contains("warning: " + looks + " is left out until it is fixed"), plan.err());
        assertFalse(plan.out().isEmpty());
        Run swatch = Run.of("looks", "sea-mist", "--toml", "--config", file.toString());
        assertEquals(0, swatch.status(), swatch.err());
        assertTrue(swatch.err().contains("is left out"), swatch.err());
        assertEquals(1, Run.of("check", file.toString()).status(), "check counts it as a mistake");
    }
}
