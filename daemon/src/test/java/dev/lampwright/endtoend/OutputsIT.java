package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.protocol.Here;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.EmulatedBoard;
import dev.lampwright.testing.EmulatedBoard.Latched;
import dev.lampwright.testing.Firmware;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A strip on several data lines, from the daemon's jar to the pins. */
@Tag("alone")
@Timeout(120)
class OutputsIT extends OwnBench {
    private static final Duration LONG = Duration.ofSeconds(30);

    /** More chunks of bytes than this mean that the daemon has retried. */
    private static final int ASKED_AGAIN = 8;

    private Path configure(Path port, int baud, String outputs) throws IOException {
        Path file = birch.configure(folder, port, baud);
        return Files.writeString(
                file, Files.readString(file).replace("pixels = 30", "pixels = 30\noutputs = " + outputs));
    }

    /** The third data line is skipped. All are driven for as long as the longest, dark beyond their own pixels. */
    @Test
    void eachDataLineOfTheBoardShowsItsPixels() throws IOException {
        List<Integer> pixels = List.of(12, 7, 0, 5, 1, 2, 2, 1);
        Firmware.Build build = new Firmware.Build(Firmware.Chip.RP2040, Firmware.Build.USB);
        EmulatedBoard board = running(EmulatedBoard.start(build, folder.resolve("board")));
        running(RunningDaemon.start(configure(board.port(), build.hostBaud(), pixels.toString())));
        for (String phase : List.of(Birch.FAULT, Birch.HELD)) {
            birch.tellJob(phase, 0);
            awaitOnBoard(board, pixels, Birch.still(phase));
        }
        birch.tellHeat(42, 62, 122, 222);
        birch.tellJob(Birch.WARMING, 0);
        awaitOnBoard(board, pixels, Birch.warming(0.5, 0.5));
        assertEquals(0, board.stats().get("out_of_tolerance").asInt());
    }

    private static void awaitOnBoard(EmulatedBoard board, List<Integer> pixels, Picture picture) {
        Await.until(() -> "the board shows " + picture, () -> picture.isOn(joined(board.frames(), pixels)), LONG);
    }

    /** The pixels of each data line in the latest frame, one after the other; the rest of the frame is dark. */
    private static List<Integer> joined(List<Latched> frames, List<Integer> pixels) {
        List<Integer> strip = new ArrayList<>();
        for (int i = 0; i < pixels.size(); i++) {
            int output = i;
            int own = 3 * pixels.get(i);
            List<Integer> shown = frames.stream()
                    .filter(each -> each.output() == output)
                    .reduce((one, other) -> other)
                    .map(Latched::strip)
                    .orElse(List.of());
            strip.addAll(shown.subList(0, Math.min(own, shown.size())));
            strip.addAll(shown.subList(Math.min(own, shown.size()), shown.size()).stream()
                    .filter(value -> value != 0)
                    .toList());
        }
        return strip;
    }

    @Test
    void theControllerInMemoryTakesThem() throws IOException {
        Here eight = new Here(1, "1.1.0", 1, 4000, 12_019, 6, 2, 10_000, true, 8);
        PtyController controller = running(new PtyController(folder.resolve("controller"), eight));
        controller.plug();
        RunningDaemon daemon = running(RunningDaemon.start(configure(controller.port(), 500_000, "[10, 20]")));
        birch.tellJob(Birch.FAULT, 0);
        awaitLit(controller, daemon);
    }

    private static void awaitLit(PtyController controller, RunningDaemon daemon) {
        Await.until(
                () -> "the strip is lit; " + daemon.log(),
                () -> controller
                        .recording()
                        .lastIs(shown -> Birch.still(Birch.FAULT).isOn(shown.strip())),
                LONG);
    }

    /** One line, however often it retries; and the file without outputs lights the strip. */
    @Test
    void aControllerWithOneDataLineIsLoggedOnceWithARemedy() throws IOException {
        PtyController controller = running(new PtyController(folder.resolve("controller"), MemoryController.BOARD));
        AtomicInteger chunks = new AtomicInteger();
        controller.fromHost(bytes -> {
            chunks.addAndGet(bytes.length > 0 ? 1 : 0);
            return bytes;
        });
        controller.plug();
        Path file = configure(controller.port(), 500_000, "[10, 20]");
        RunningDaemon daemon = running(RunningDaemon.start(file));
        String remedy = "the controller has 1 data line, and [strip] outputs needs 2: join the strip end to end and"
                + " remove outputs, or use a board that has more, such as an RP2040";
        Await.until("the daemon asks again", LONG, () -> chunks.get() > ASKED_AGAIN);
        List<String> told = daemon.linesWith(0, remedy);
        assertEquals(1, told.size(), () -> daemon.log().toString());
        assertTrue(told.get(0).contains(controller.port() + ": the controller has"), told.get(0));
        assertEquals(
                List.of(),
                controller.recording().entries().stream()
                        .filter(Recording.Entry::fromHost)
                        .toList());
        birch.tellJob(Birch.FAULT, 0);
        Files.writeString(file, Files.readString(file).replace("outputs = [10, 20]", ""));
        awaitLit(controller, daemon);
    }
}
