package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.Recording;
import dev.lampwright.tool.replay.Replay;
import dev.lampwright.tool.replay.Timeline;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole daemon, from a real broker to a controller in memory, recorded and played back. */
class RecordedDaemonIT {
    /** Every look moves in every frame, so that no frame looks like another. The fade at a daemon's end is not recorded. */
    private static final String FILE = """
            broker.url = "%s"
            controller = { port = "memory", baud = 1000000, at_end = "when_silent" }
            supply.ceiling_mA = 60000
            strip.pixels = 40
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            [printer.state]
            topic = "shop/alder/job"
            at = "/phase"
            warming = ["PREHEAT"]
            printing = ["RUN"]
            fault = ["ALARM*"]
            [printer.readings]
            bed.actual_C = { topic = "shop/alder/heat", at = "/now" }
            bed.setpoint_C = { topic = "shop/alder/heat", at = "/set" }
            job.progress = { topic = "shop/alder/job", at = "/percent", scale = 0.01 }
            [looks.hot]
            layers = [
              { paint = "ramp", colours = ["navy", "red", "navy"], cycle_s = 7 },
              { colour = "gold", extent = "bar", by = "bed.heat", opacity = 0.5 },
            ]
            [looks.busy]
            dimmers.work = { by = "job.progress" }
            layers = [
              { paint = "ramp", colours = ["navy", "lime", "navy"], cycle_s = 5 },
              { colour = "white", extent = "bar", by = "job.progress", opacity = 0.5 },
            ]
            [looks.calm]
            layers = [{ paint = "ramp", colours = ["navy", "white", "navy"], cycle_s = 11 }]
            [[cues]]
            state = "warming"
            look = "hot"
            [[cues]]
            state = "printing"
            look = "busy"
            [[cues]]
            look = "calm"
            """;

    private static final int MADE_WHILE_CLOSING = 600;
    /** A fault that comes when a frame is due anyway is not early. */
    private static final int MOST_FAULTS = 20;

    @TempDir
    private Path folder;

    private final Recording shown = new Recording();

    @Test
    void everyFrameThatTheControllerShowedIsOneOfTheReplayInTheirOrder() throws ConfigException, IOException {
        Path file = folder.resolve("recording.jsonl");
        String text;
        long frames;
        try (Mosquitto broker = Mosquitto.start()) {
            text = FILE.formatted(broker.url());
            frames = record(broker, ConfigFile.read(text, "alder.toml"), file);
        }
        List<Recording.Entry> fromHost =
                shown.entries().stream().filter(Recording.Entry::fromHost).toList();
        assertTrue(fromHost.size() > 60, fromHost.size() + " frames shown");
        assertTrue(
                new HashSet<>(strips(fromHost)).size() > fromHost.size() * 0.9, "most frames differ from all others");
        assertTrue(Files.readString(file).contains("\"relit\":true"), "that the controller was lit is recorded");
        assertTrue(Files.readString(file).contains("\"early_ns\":"), "that a fault did not wait is recorded");
        assertTrue(Files.readString(file).contains("\"brightness_fade\":[0.3]"), "what was asked for is recorded");
        requireInOrder(fromHost, Replay.of(ConfigFile.read(text, "alder.toml"), Timeline.read(file)), frames);
    }

    private long record(Mosquitto broker, Config config, Path file) throws IOException {
        MemoryLine line = new MemoryLine(
                new MemoryController(MemoryController.BOARD, shown),
                config.controller().baud(),
                System::nanoTime);
        try (Recorder recorder = new Recorder(file);
                Daemon daemon = new Daemon(config, next -> line, recorder, Optional.empty())) {
            daemon.start();
            awaitFrames(daemon, 20);
            tell(broker, daemon, "PREHEAT", 0, PrinterState.WARMING);
            for (int celsius = 25; celsius <= 60; celsius += 7) {
                broker.publish("shop/alder/heat", "{\"now\":" + celsius + ".3,\"set\":60}", true);
                awaitFrames(daemon, 10);
            }
            tell(broker, daemon, "RUN", 1.7, PrinterState.PRINTING);
            tell(broker, daemon, "RUN", 48.31, PrinterState.PRINTING);
            String asked =
                    "{\"lights\": {\"brightness\": \"60 %\", \"pixels\": {\"0\": \"red\"}}, \"for_s\": 0.4, \"fade_s\": 0.3}";
            assertTrue(daemon.desk().ask("lights", asked).done());
            awaitFrames(daemon, 50);
            tell(broker, daemon, "ALARM tip", 48.31, PrinterState.FAULT);
            for (int i = 0; i < MOST_FAULTS && !Files.readString(file).contains("early_ns"); i++) {
                tell(broker, daemon, "RUN", 50 + i, PrinterState.PRINTING);
                tell(broker, daemon, "ALARM tip", 50 + i, PrinterState.FAULT);
            }
            return daemon.frames().snapshot().frames()
                    + daemon.frames().snapshot().skipped()
                    + MADE_WHILE_CLOSING;
        }
    }

    private void tell(Mosquitto broker, Daemon daemon, String phase, double percent, PrinterState state) {
        broker.publish("shop/alder/job", "{\"phase\":\"" + phase + "\",\"percent\":" + percent + "}", true);
        Await.until(
                "a frame that shows " + state, () -> daemon.frames().snapshot().state() == state);
        awaitFrames(daemon, 20);
    }

    private void awaitFrames(Daemon daemon, int more) {
        int before = shown.size();
        Await.until("more frames shown", () -> shown.size() > before + more);
        Await.until("the link lit", () -> daemon.link().framesShown() > 0);
    }

    private static List<List<Integer>> strips(List<Recording.Entry> entries) {
        return entries.stream().map(Recording.Entry::strip).toList();
    }

    /** The link skips frames when there is a newer one, so not every frame of the replay was shown. */
    private static void requireInOrder(List<Recording.Entry> shown, Replay replay, long frames) {
        Frame frame =
                new Frame(shown.get(0).strip().size(), shown.get(0).duties().size());
        int found = 0;
        for (long tick = 0; tick <= frames && found < shown.size(); tick++) {
            replay.next(frame);
            found += isSame(frame, shown.get(found)) ? 1 : 0;
        }
        assertTrue(found == shown.size(), "frame " + found + " of " + shown.size() + " is not in the replay");
    }

    private static boolean isSame(Frame frame, Recording.Entry shown) {
        return IntStream.range(0, frame.strip().length)
                        .allMatch(
                                i -> (frame.strip()[i] & 0xFF) == shown.strip().get(i))
                && IntStream.range(0, frame.duties().length)
                        .allMatch(i -> frame.duties()[i] == shown.duties().get(i));
    }
}
