package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.json.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands that get the folder of several rigs. */
class RigOptionTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.createDirectory(folder.resolve("rigs"));
        Files.writeString(folder.resolve("shop.toml"), """
                broker.url = "mqtt://127.0.0.1"
                controller.port = "/dev/lampwright-{rig}"
                printer.state.topic = "shop/{rig}/job"
                printer.state.printing = ["RUN"]
                printer.state.fault = ["ALARM"]
                strip.pixels = 8
                page.port = 61200
                """);
        rig("alder", "");
        rig("birch", "");
    }

    private void rig(String name, String text) throws IOException {
        Files.writeString(folder.resolve("rigs").resolve(name + ".toml"), text);
    }

    @Test
    void checkGoesThroughAllRigs() throws IOException {
        Run good = Run.of("check", folder.toString());
        assertEquals(0, good.status(), good.err());
        List<String> lines = good.out().lines().toList();
        assertTrue(lines.get(0).startsWith(folder + "/rigs/alder.toml: good; "), good.out());
        assertTrue(lines.get(1).startsWith(folder + "/rigs/birch.toml: good; "), good.out());
        lines.forEach(line -> assertTrue(line.length() < folder.toString().length() + 100, line));
        Run one = Run.of("check", folder.toString(), "--rig", "birch");
        assertTrue(one.out().contains("shop/birch/job"), one.out());
        assertEquals(folder + ": 2 of 2 rigs are good", lines.get(2));
        rig("birch", "strip.pixels = 0\n");
        Run bad = Run.of("check", folder.toString());
        assertEquals(1, bad.status());
        assertTrue(bad.err().contains(folder + "/rigs/birch.toml:1: strip.pixels: is 0; "), bad.err());
        assertTrue(bad.out().endsWith(folder + ": 1 of 2 rigs are good\n"), bad.out());
    }

    @Test
    void checkTellsAllRigsToPrograms() throws IOException {
        rig("birch", "strip.pixels = 0\n");
        Run run = Run.of("check", "--json", folder.toString());
        assertEquals(1, run.status());
        var told = Json.read(run.out()).orElseThrow();
        assertEquals(false, told.path("good").asBoolean(true));
        assertEquals("alder", told.path("rigs").path(0).path("rig").asText());
        assertEquals(true, told.path("rigs").path(0).path("good").asBoolean());
        assertEquals(
                "strip.pixels",
                told.path("rigs").path(1).path("mistakes").path(0).path("key").asText());
    }

    @Test
    void oneRigIsChosenByItsName() {
        Run run = Run.of("check", folder.toString(), "--rig", "birch");
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().startsWith(folder + "/rigs/birch.toml: good; "), run.out());
    }

    @Test
    void aNameThatThereIsNotIsToldWithTheNearest() {
        Run run = Run.of("plan", folder.toString(), "--rig", "brich");
        assertEquals(1, run.status());
        assertEquals(folder + "/rigs: has no rig \"brich\"; did you mean birch?\n", run.err());
    }

    @Test
    void aCommandForOneRigAsksForItsName() {
        Run run = Run.of("plan", folder.toString());
        assertEquals(2, run.status());
        assertTrue(run.err().contains(folder + " has 2 rigs; choose one with --rig: alder, birch"), run.err());
    }

    @Test
    void theOnlyRigNeedsNoName() throws IOException {
        Files.delete(folder.resolve("rigs").resolve("birch.toml"));
        assertTrue(Run.of("plan", folder.toString()).err().isEmpty());
    }

    @Test
    void aFolderWithoutRigsSaysHowToAddOne() throws IOException {
        Files.delete(folder.resolve("rigs").resolve("alder.toml"));
        Files.delete(folder.resolve("rigs").resolve("birch.toml"));
        Run run = Run.of("plan", folder.toString());
        assertEquals(2, run.status());
        assertTrue(run.err().contains(folder + " has no rigs yet; add a file NAME.toml to its folder rigs"), run.err());
        assertEquals(
                folder + ": no rigs yet; add a file NAME.toml to its folder rigs",
                Run.of("check", folder.toString()).out().strip());
    }

    @Test
    void aFileHasNoRigs() {
        Run run = Run.of("check", folder + "/rigs/alder.toml", "--rig", "alder");
        assertEquals(2, run.status());
        assertTrue(run.err().contains("--rig goes with a folder that has a shop.toml"), run.err());
    }

    @Test
    void thePageOfARigIsBelowItsName() {
        assertTrue(Run.of("page", folder.toString()).out().startsWith("http://127.0.0.1:61200/\n"));
        assertTrue(Run.of("page", folder.toString(), "--rig", "alder")
                .out()
                .startsWith("http://127.0.0.1:61200/alder/\n"));
    }

    @Test
    void aRecordingIsOfOneRig() {
        Run run = Run.of("run", "--config", folder.toString(), "--record", "x.jsonl");
        assertEquals(2, run.status());
        assertTrue(run.err().contains("--record records one rig"), run.err());
    }

    @Test
    void aMistakeOfTheShopIsToldOnce() throws IOException {
        Files.writeString(folder.resolve("shop.toml"), "pgae = 1\n");
        String told = folder + "/shop.toml:1: pgae: is not known; did you mean page?\n";
        assertEquals(told, Run.of("check", folder.toString()).err());
        assertEquals(told, Run.of("run", "--config", folder.toString()).err());
    }
}
