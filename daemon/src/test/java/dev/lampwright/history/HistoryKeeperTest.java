package dev.lampwright.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.SmallDisk;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class HistoryKeeperTest {
    private static final String TOLD = "; what happened before is forgotten, and the file is now ";

    private final CapturedLog log = new CapturedLog(HistoryKeeper.class.getName());
    private final TestClock clock = new TestClock();
    private boolean silent;
    private boolean alarm;
    private String words = "";

    @TempDir
    private Path folder;

    @AfterEach
    void stop() {
        log.close();
    }

    private Path file() {
        return folder.resolve("state").resolve("alder.history.jsonl");
    }

    private HistoryKeeper keeper(Path file) {
        HistoryKeeper keeper = new HistoryKeeper(
                Optional.of(file), () -> Map.of("", new Glance(silent, words, Double.NaN, 60, 215, 100, alarm)), clock);
        keeper.follow(true);
        return keeper;
    }

    private static Sighting sighting(PrinterState state) {
        return new Sighting(state, "", Double.NaN);
    }

    /** As the thread does. */
    private void look(HistoryKeeper keeper, int seconds) {
        for (int i = 0; i < seconds; i++) {
            clock.pass(1);
            keeper.look();
        }
    }

    @Test
    void whatHappenedIsThereForTheNextRun() throws IOException {
        HistoryKeeper keeper = keeper(file());
        keeper.saw("", sighting(PrinterState.IDLE));
        look(keeper, 5);
        keeper.saw("", sighting(PrinterState.PRINTING));
        look(keeper, 20);
        alarm = true;
        words = "bed too cold";
        keeper.saw("", sighting(PrinterState.FAULT));
        look(keeper, 2);
        keeper.acknowledged("", "mqtt", "", "panel");
        look(keeper, 20);
        Account kept = HistoryFile.read(file()).of("");
        assertEquals(JobEnd.RUNNING, kept.jobs().get(0).end());
        assertEquals("bed too cold", kept.faults().get(0).words());
        assertEquals(
                "panel (mqtt)",
                kept.faults().get(0).acknowledged().orElseThrow().who());
        Account restored = keeper(file()).accounts().of("");
        assertEquals(kept.jobs(), restored.jobs());
        assertEquals(kept.faults(), restored.faults());
        assertEquals(60, restored.curves().get(0).bed()[0]);
        assertEquals(List.of(), log.lines());
        try (var files = Files.list(file().getParent())) {
            assertEquals(1, files.count(), "and nothing is left beside it");
        }
    }

    @Test
    void aStateThatIsOverWithinASecondIsNotMissed() {
        HistoryKeeper keeper = keeper(file());
        keeper.saw("", sighting(PrinterState.IDLE));
        look(keeper, 1);
        clock.pass(0.2);
        keeper.saw("", sighting(PrinterState.FAULT));
        clock.pass(0.1);
        keeper.saw("", sighting(PrinterState.IDLE));
        look(keeper, 1);
        PastFault fault = keeper.accounts().of("").faults().get(0);
        assertEquals(100, fault.over().orElseThrow().millis() - fault.began().millis());
    }

    @Test
    void silenceIsSeenThoughNothingSaysSo() {
        HistoryKeeper keeper = keeper(file());
        keeper.saw("", sighting(PrinterState.IDLE));
        look(keeper, 2);
        silent = true;
        look(keeper, 2);
        silent = false;
        look(keeper, 2);
        assertEquals(
                List.of(PrinterState.IDLE, PrinterState.SILENT, PrinterState.IDLE),
                keeper.accounts().of("").spans().stream().map(StateSpan::state).toList());
    }

    @Test
    void aFloodBetweenTwoLooksKeepsItsEnd() {
        HistoryKeeper keeper = keeper(file());
        for (int i = 0; i < 100_000; i++) {
            keeper.saw("", sighting(i % 2 == 0 ? PrinterState.PRINTING : PrinterState.IDLE));
        }
        keeper.saw("", sighting(PrinterState.DONE));
        look(keeper, 1);
        List<StateSpan> spans = keeper.accounts().of("").spans();
        assertTrue(spans.size() <= HistoryKeeper.MOST_NOTED + 2, spans.size() + " spans");
        assertEquals(PrinterState.DONE, spans.get(spans.size() - 1).state());
    }

    private long changed() throws IOException {
        return Files.getLastModifiedTime(file()).to(TimeUnit.NANOSECONDS);
    }

    /** How much is written to a memory card: a day of ten jobs, and one of a printer that flickers all day. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aDayTakesNoMoreThanItsShareOfAMemoryCard(boolean flickers) throws IOException {
        HistoryKeeper keeper = keeper(file());
        long bytes = 0;
        int writings = 0;
        long stamp = -1;
        PrinterState[] job = {PrinterState.WARMING, PrinterState.PRINTING, PrinterState.DONE, PrinterState.IDLE};
        for (int second = 0; second < 86_400; second++) {
            if (flickers || second % 2160 == 0) {
                keeper.saw("", sighting(job[flickers ? second % 4 : second / 2160 % 4]));
            }
            clock.pass(1);
            keeper.look();
            if (Files.exists(file()) && changed() != stamp) {
                stamp = changed();
                bytes += Files.size(file());
                writings++;
            }
        }
        System.out.printf("a day%s: %d times, %d bytes%n", flickers ? " that flickers" : "", writings, bytes);
        assertTrue(writings > 40, writings + " times");
        assertTrue(
                bytes <= HistoryKeeper.BYTES_PER_DAY + HistoryKeeper.BYTES_SAVED + Files.size(file()),
                bytes + " bytes");
        assertTrue(Files.size(file()) < 300_000, Files.size(file()) + " bytes");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{\"format\":\"lampwright history 1\",", "GIF89a\u0000", "{\"colour\":\"red\"}"})
    void whatIsDamagedOrForeignIsSetAsideAndToldInALine(String text) throws IOException {
        Files.createDirectories(file().getParent());
        Files.writeString(file(), text);
        assertEquals(List.of(), keeper(file()).accounts().of("").jobs());
        assertEquals(1, log.lines().size(), log.lines().toString());
        String line = log.lines().get(0);
        assertTrue(line.startsWith("WARN " + file() + ": is "), line);
        assertTrue(line.endsWith(TOLD + file() + ".damaged"), line);
        assertFalse(Files.exists(file()));
        assertEquals(text, Files.readString(file().resolveSibling(file().getFileName() + ".damaged")));
    }

    @Test
    void aFileThatCannotBeWrittenIsToldOnceAndTriedAgain() throws IOException {
        Path blocked = folder.resolve("state");
        Files.writeString(blocked, "a file where the folder should be");
        HistoryKeeper keeper = keeper(file());
        keeper.saw("", sighting(PrinterState.IDLE));
        look(keeper, 120);
        assertEquals(1, log.lines().size(), log.lines().toString());
        assertTrue(
                log.lines()
                        .get(0)
                        .endsWith(
                                "; let this user write there, or set STATE_DIRECTORY; until then the history is not kept"),
                log.lines().toString());
        Files.delete(blocked);
        look(keeper, 20);
        assertEquals(
                PrinterState.IDLE,
                HistoryFile.read(file()).of("").spans().get(0).state());
        assertEquals(
                "INFO " + file() + ": the history is kept again", log.lines().get(1));
        assertEquals(2, log.lines().size());
    }

    @Test
    void aFullDiskLeavesWhatWasKeptBefore() throws IOException {
        try (SmallDisk disk = new SmallDisk(folder.resolve("disk"))) {
            assumeTrue(disk.canBeFilled(), "this user may not mount a file system");
            Path file = disk.recording().resolveSibling("alder.history.jsonl");
            HistoryKeeper keeper = keeper(file);
            keeper.saw("", sighting(PrinterState.IDLE));
            look(keeper, 20);
            String before = Files.readString(file);
            disk.fill();
            keeper.saw("", sighting(PrinterState.PRINTING));
            look(keeper, 60);
            assertEquals(before, Files.readString(file));
            assertEquals(1, log.lines().size(), log.lines().toString());
            assertTrue(
                    log.lines().get(0).contains("No space left on device"),
                    log.lines().get(0));
            disk.empty();
            look(keeper, 20);
            assertEquals(1, HistoryFile.read(file).of("").jobs().size());
        }
    }

    @Test
    void withoutTheKeyNothingIsWrittenAndNothingIsLost() throws IOException {
        HistoryKeeper keeper = keeper(file());
        keeper.saw("", sighting(PrinterState.IDLE));
        look(keeper, 20);
        String before = Files.readString(file());
        keeper.follow(false);
        keeper.saw("", sighting(PrinterState.PRINTING));
        look(keeper, 4000);
        assertEquals(before, Files.readString(file()));
        assertEquals(1, keeper.accounts().of("").jobs().size(), "the page has it all the same");
    }

    /** Names that are no longer used do not produce a file that cannot be read again. */
    @Test
    void theOldestOfManyFormerNamesAreForgotten() {
        Glance glance = new Glance(false, "", Double.NaN, 60, 215, 100, false);
        AtomicReference<String> name = new AtomicReference<>("");
        HistoryKeeper keeper = new HistoryKeeper(Optional.of(file()), () -> Map.of(name.get(), glance), clock);
        for (int i = 0; i < 70; i++) {
            name.set("oak-" + i);
            keeper.saw(name.get(), sighting(PrinterState.PRINTING));
            look(keeper, 1);
        }
        Accounts kept = HistoryText.read(HistoryText.of(keeper.accounts()));
        assertEquals(HistoryText.MOST_PRINTERS, kept.byPrinter().size());
        assertEquals(1, kept.of("oak-69").jobs().size());
        assertEquals(0, kept.of("oak-0").jobs().size());
    }

    @Test
    void eachPrinterHasItsOwnJobsAndFaults() throws IOException {
        Glance glance = new Glance(false, "", Double.NaN, 60, 215, 100, true);
        HistoryKeeper keeper =
                new HistoryKeeper(Optional.of(file()), () -> Map.of("alder", glance, "birch", glance), clock);
        keeper.follow(true);
        keeper.saw("alder", sighting(PrinterState.PRINTING));
        keeper.saw("birch", sighting(PrinterState.FAULT));
        look(keeper, 1);
        keeper.acknowledged("birch", "mqtt", "", "panel");
        look(keeper, 20);
        for (Accounts kept : List.of(HistoryFile.read(file()), keeper.accounts())) {
            assertEquals(1, kept.of("alder").jobs().size());
            assertEquals(0, kept.of("alder").faults().size());
            assertEquals(0, kept.of("birch").jobs().size());
            assertTrue(kept.of("birch").faults().get(0).acknowledged().isPresent());
        }
        String json = HistoryJson.of(keeper.accounts()).text();
        assertTrue(json.contains("\"printer\":\"alder\""), json);
    }
}
