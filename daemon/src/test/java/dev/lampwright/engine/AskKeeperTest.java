package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.desk.Desk;
import dev.lampwright.desk.DeskSettings;
import dev.lampwright.desk.KnownLooks;
import dev.lampwright.file.KeptFile;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class AskKeeperTest {
    private final CapturedLog log = new CapturedLog(AskKeeper.class.getName());

    @TempDir
    private Path folder;

    private static Desk desk() {
        return new Desk(
                DeskSettings.USUAL,
                new Fitting(4, Map.of("strip", Zone.run(0, 3)), List.of()),
                new KnownLooks(Set.of("done"), Set.of()),
                new Desk.Clocks(System::nanoTime, InstantSource.system()),
                () -> Desk.Alarm.NONE,
                wishes -> {});
    }

    @AfterEach
    void stop() {
        log.close();
    }

    private Path file() {
        return folder.resolve("state").resolve("lampwright").resolve("alder.asks.json");
    }

    private Path file(String text) throws IOException {
        Files.createDirectories(file().getParent());
        return Files.writeString(file(), text);
    }

    private static float restored(Path file) {
        Desk desk = desk();
        new AskKeeper(file, desk).restore();
        return desk.wishes().brightness();
    }

    private static void ask(Desk desk, String brightness) {
        assertTrue(desk.ask("brightness", brightness).done());
    }

    @Test
    void whatIsAskedForIsThereForTheNextRun() throws IOException {
        Desk desk = desk();
        try (AskKeeper keeper = new AskKeeper(file(), desk)) {
            keeper.restore();
            keeper.follow(true);
            ask(desk, "0.25");
            Await.until("the file", () -> Files.exists(file()));
            assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file().getParent())));
            ask(desk, "0.5");
        }
        assertEquals(0.5f, restored(file()), "the last one is written at the end, however soon it came after another");
        assertEquals(List.of(), log.lines());
        try (var files = Files.list(file().getParent())) {
            assertEquals(1, files.count(), "and nothing is left beside it");
        }
    }

    /** As after a power cut: the temporary file next to it was being written. */
    @Test
    void aCrashWhileItIsWrittenLeavesWhatWasKeptBefore() throws IOException {
        Desk desk = desk();
        ask(desk, "0.25");
        String kept = desk.kept();
        file(kept);
        Path torn = file().resolveSibling("." + file().getFileName() + ".new");
        Files.writeString(torn, kept.substring(0, kept.length() / 2));
        assertEquals(0.25f, restored(file()));
        try (AskKeeper keeper = new AskKeeper(file(), desk)) {
            keeper.follow(true);
            ask(desk, "0.75");
        }
        assertEquals(0.75f, restored(file()));
        assertFalse(Files.exists(torn));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "{\"format\":\"lampwright asks 1\",\"asked\":[", "GIF89a\u0000", "{\"colour\":\"red\"}"})
    void whatIsDamagedOrForeignIsSetAsideAndToldInALine(String text) throws IOException {
        Path file = file(text);
        assertEquals(1, restored(file));
        assertEquals(1, log.lines().size(), log.lines().toString());
        assertTrue(
                log.lines().get(0).startsWith("WARN " + file + ": is "),
                log.lines().toString());
        assertFalse(Files.exists(file));
        assertEquals(text, Files.readString(file.resolveSibling(file.getFileName() + ".damaged")));
    }

    @Test
    void whatIsNoTextOrTooLongOrNoFileIsSetAside() throws IOException {
        Files.write(file(""), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertEquals(1, restored(file()));
        file("x".repeat((int) KeptFile.MOST_BYTES + 1));
        assertEquals(1, restored(file()));
        Files.createDirectory(file());
        assertEquals(1, restored(file()));
        String aside = "; what was asked for before is forgotten, and the file is now " + file() + ".damaged";
        assertEquals(
                List.of(
                        "WARN " + file() + ": is not UTF-8 text" + aside,
                        "WARN " + file() + ": is longer than 1048576 bytes" + aside,
                        "WARN " + file() + ": is a folder" + aside),
                log.lines());
    }

    @Test
    void aFileThatCannotBeWrittenIsToldOnceAndTriedAgain() throws IOException {
        Path blocked = folder.resolve("state");
        Files.writeString(blocked, "a file where the folder should be");
        Desk desk = desk();
        try (AskKeeper keeper = new AskKeeper(file(), desk)) {
            keeper.follow(true);
            ask(desk, "0.25");
            Await.until("the complaint", () -> !log.lines().isEmpty());
            Files.delete(blocked);
        }
        assertEquals(0.25f, restored(file()));
        assertEquals(2, log.lines().size(), log.lines().toString());
        assertTrue(
                log.lines()
                        .get(0)
                        .endsWith(
                                "; let this user write there, or set STATE_DIRECTORY; until then what is asked for is not kept"),
                log.lines().toString());
        assertEquals(
                "INFO " + file() + ": what is asked for is kept again",
                log.lines().get(1));
    }

    @Test
    void withoutTheKeyNothingStays() throws IOException {
        Desk desk = desk();
        ask(desk, "0.25");
        file(desk.kept());
        try (AskKeeper keeper = new AskKeeper(file(), desk)) {
            keeper.follow(true);
            keeper.follow(false);
            assertFalse(Files.exists(file()));
            keeper.follow(false);
            ask(desk, "0.5");
        }
        assertFalse(Files.exists(file()));
        assertEquals(List.of("INFO " + file() + ": removed, since desk.keep is off"), log.lines());
    }
}
