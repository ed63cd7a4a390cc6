package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.config.ConfigFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
    @TempDir
    private Path folder;

    private Path good;
    private Path over;

    @BeforeEach
    void writeFiles() throws IOException {
        good = folder.resolve("alder.toml");
        try (InputStream in = ConfigFile.class.getResourceAsStream("example.toml")) {
            Files.copy(in, good);
        }
        over = Files.writeString(
                folder.resolve("birch.toml"),
                Files.readString(good).replaceAll("connector_A = 2 .*\\nfuse_A = 1.25 .*\\n", "connector_A = 0.5\n"));
    }

    @Test
    void aRigWithinItsRatings() {
        Run run = Run.of("plan", good.toString());
        assertEquals(0, run.status(), run.out());
        assertEquals("", run.err());
        assertTrue(run.out().startsWith("Electrical plan of alder.toml" + System.lineSeparator()), run.out());
        for (String look : new String[] {"full white", "ceiling", "silent", "printing", "fault"}) {
            assertTrue(run.out().contains("\n  " + look + " "), look);
        }
    }

    @Test
    void aRigBeyondThem() {
        Run run = Run.of("plan", over.toString());
        assertEquals(1, run.status());
        assertTrue(run.out().contains("OVER     connector of work: carries up to 0.80 A"), run.out());
    }

    @Test
    void inJson() throws JsonProcessingException {
        Run run = Run.of("plan", "--json", over.toString());
        assertEquals(1, run.status());
        assertEquals(1, run.out().lines().count());
        JsonNode plan = new ObjectMapper().readTree(run.out());
        assertTrue(plan.get("over").booleanValue());
        assertEquals("over", plan.at("/verdicts/0/level").textValue());
        assertEquals(0.8, plan.at("/verdicts/0/value").doubleValue());
        assertEquals(0.5, plan.at("/verdicts/0/most").doubleValue());
        assertEquals(1.11, plan.at("/demand/0/peak_A").doubleValue());
        assertEquals(30, plan.at("/strip/0/pixels_V").size());
        assertEquals("work", plan.at("/wires/2/to").textValue());
        assertTrue(plan.get("cautions").size() > 5);
    }

    @Test
    void aPicture() throws IOException {
        Path picture = folder.resolve("alder.svg");
        assertEquals(
                0,
                Run.of("plan", good.toString(), "--picture", picture.toString()).status());
        assertTrue(Files.readString(picture).startsWith("<svg "));
    }

    @Test
    void aPictureThatCannotBeWritten() {
        Path picture = folder.resolve("none").resolve("alder.svg");
        Run run = Run.of("plan", good.toString(), "--picture", picture.toString());
        assertEquals(1, run.status());
        assertEquals("", run.out());
        assertEquals(
                picture + ": its folder does not exist; give the path of a file to write" + System.lineSeparator(),
                run.err());
    }

    @Test
    void aPictureIsSvg() {
        Path picture = folder.resolve("alder.png");
        Run run = Run.of("plan", good.toString(), "--picture", picture.toString());
        assertEquals(2, run.status());
        assertEquals("", run.out());
        assertEquals(
                "lampwright plan: --picture is " + picture
                        + "; give a name that ends in .svg; see lampwright plan --help" + System.lineSeparator(),
                run.err());
        assertFalse(Files.exists(picture));
    }

    @Test
    void aFileWithAMistake() throws IOException {
        Files.writeString(good, Files.readString(good).replace("ceiling_mA = 1500", "ceiling_mA = 0"));
        Run run = Run.of("plan", good.toString());
        assertEquals(1, run.status());
        assertEquals("", run.out());
        assertTrue(run.err().contains("supply.ceiling_mA: is 0; "), run.err());
    }
}
