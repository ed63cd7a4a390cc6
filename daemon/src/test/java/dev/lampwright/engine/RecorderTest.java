package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.Wishes;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.testing.Await;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecorderTest {
    @TempDir
    private Path folder;

    @Test
    void linesAreInTheFileBeforeItIsClosed() throws IOException {
        Path file = folder.resolve("recording.jsonl");
        try (Recorder recorder = new Recorder(file)) {
            recorder.start(1_000);
            recorder.shown(7, Statuses.of(PrinterStatus.nothingHeard().heardAt(1_001)));
            Await.until("a line in the file", () -> !lines(file).isEmpty());
            recorder.leftOut(8, 2);
        }
        assertEquals(List.of("{\"tick\":7,\"at_s\":0.000000001}", "{\"tick\":8,\"left_out\":2}"), lines(file));
    }

    @Test
    void wishesAreWrittenOnceSomebodyAsksForSomething() throws IOException {
        Path file = folder.resolve("recording.jsonl");
        try (Recorder recorder = new Recorder(file)) {
            recorder.start(0);
            recorder.asked(0, Wishes.NONE.withBrightness(1));
            recorder.asked(3, Wishes.NONE.withBrightness(0.5));
            recorder.asked(9, Wishes.NONE);
        }
        assertEquals(2, lines(file).size());
        assertTrue(lines(file).get(0).startsWith("{\"tick\":3,\"wishes\":{\"brightness\":0.5,"));
        assertTrue(lines(file).get(1).startsWith("{\"tick\":9,\"wishes\":{\"brightness\":1.0,"));
    }

    @Test
    void aRecordingOfAnotherDayStaysAsItIs() throws IOException {
        Path file = Files.writeString(folder.resolve("recording.jsonl"), "of another day\n");
        IOException e = assertThrows(IOException.class, () -> new Recorder(file).close());
        assertEquals(file + ": already exists; choose another path, or move it away", e.getMessage());
        assertEquals(List.of("of another day"), lines(file));
    }

    @Test
    void aRecordingIsForThisUserOnly() throws IOException {
        Path file = folder.resolve("recording.jsonl");
        new Recorder(file).close();
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }

    @Test
    void aRecorderThatWasNeverStartedCloses() throws IOException {
        Path file = folder.resolve("recording.jsonl");
        new Recorder(file).close();
        assertEquals(List.of(), lines(file));
    }

    @Test
    void aFileThatCannotBeWritten() {
        Path file = folder.resolve("nowhere").resolve("recording.jsonl");
        IOException e = assertThrows(IOException.class, () -> new Recorder(file).close());
        assertEquals(file + ": its folder does not exist; give the path of a file to write", e.getMessage());
    }

    @Test
    void theRingKeepsTheOrderAndCountsWhatDoesNotFit() {
        Ring ring = new Ring();
        List<Long> taken = new ArrayList<>();
        for (int round = 0; round < 3; round++) {
            for (long tick = 0; tick < Ring.SIZE + 5; tick++) {
                ring.put(tick, PrinterStatus.nothingHeard());
            }
            taken.clear();
            ring.drain((tick, thing) -> taken.add(tick));
            assertEquals(Ring.SIZE, taken.size());
            assertEquals(Ring.SIZE - 1, taken.get(Ring.SIZE - 1));
        }
        assertEquals(15, ring.lost());
        assertTrue(taken.contains(0L));
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
