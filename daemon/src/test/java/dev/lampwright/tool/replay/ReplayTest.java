package dev.lampwright.tool.replay;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.Delivery;
import dev.lampwright.engine.Early;
import dev.lampwright.engine.Recorder;
import dev.lampwright.engine.StatusWatch;
import dev.lampwright.engine.Ticks;
import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReplayTest {
    /** So little current that the guard is active, and dithering: both depend on previous frames. */
    private static final String FILE = """
            frames_per_s = 60
            broker.url = "mqtt://127.0.0.1"
            printer.state = { topic = "shop/birch/job", printing = ["RUN"] }
            printer.silent_after_s = 2
            controller.port = "memory"
            supply.ceiling_mA = 1500
            strip = { pixels = 24, order = "GRBW", dithering = true }
            zones = { bed = "0-9", job = "23-10" }
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            [looks.busy]
            dimmers = { work = 0.7 }
            layers = [
              { colour = "white", opacity = 0.3 },
              { paint = "ember" },
              { zone = "job", colour = "cyan", extent = "bar", by = "job.progress" },
              { zone = "bed", colour = "gold", extent = "bar", by = "bed.heat", rhythm = "swell 2s" },
              { zone = "bed", colour = "white", opacity = 0.6, rhythm = "Iso 0.3s" },
            ]
            [[cues]]
            state = ["printing", "warming"]
            look = "busy"
            fade_s = 0.7
            """;

    private static final List<PrinterState> STATES = List.of(PrinterState.values());

    @TempDir
    private Path folder;

    private static Config config() {
        try {
            return ConfigFile.read(FILE, "birch.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    private static Frame frame(Config config) {
        return new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    /** Runs a chain like the frame loop, with frames skipped now and then, and records; then plays it back. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aRecordingGivesTheSameBytesFrameByFrame(long seed) throws IOException {
        Path file = folder.resolve("recording.jsonl");
        Frames made = new Frames();
        try (Recorder recorder = new Recorder(file)) {
            run(new Random(seed), recorder, made);
        }
        Replay replay = Replay.of(config(), Timeline.read(file));
        Frame frame = frame(config());
        Set<PrinterState> states = EnumSet.noneOf(PrinterState.class);
        for (int i = 0; i < made.frames.size(); i++) {
            replay.next(frame);
            assertEquals(made.ticks.get(i), replay.tick());
            assertArrayEquals(made.frames.get(i).strip(), frame.strip(), "frame " + replay.tick());
            assertArrayEquals(made.frames.get(i).duties(), frame.duties(), "frame " + replay.tick());
            states.add(replay.state());
        }
        assertTrue(states.size() > 2, "shown: " + states);
    }

    private static final class Frames {
        private final List<Long> ticks = new ArrayList<>();
        private final List<Frame> frames = new ArrayList<>();
    }

    private static void run(Random random, StatusWatch watch, Frames made) {
        Config config = config();
        Chain chain = Chain.of(config);
        long start = random.nextLong() / 2;
        watch.start(start);
        PrinterStatus status = PrinterStatus.nothingHeard();
        Wishes wishes = Wishes.NONE;
        for (long tick = 0; tick < 3000; tick++) {
            long nanos = start + Ticks.nanos(tick, config.framesPerSecond());
            if (tick > 0 && random.nextInt(30) == 0) {
                Early early = new Early(tick, 1 + random.nextInt(16_000_000));
                nanos -= early.nanos();
                watch.early(early);
            }
            if (random.nextInt(12) == 0) {
                status = afterMessages(status, nanos, random);
                watch.shown(tick, Statuses.of(status));
            }
            Frame frame = frame(config);
            if (random.nextInt(60) == 0) {
                wishes = afterAsks(wishes, nanos, random);
                watch.asked(tick, wishes);
            }
            if (random.nextInt(90) == 0) {
                Delivery delivery = new Delivery(tick, 300_000_000, random.nextBoolean());
                chain.delivered(delivery);
                watch.delivered(delivery);
            }
            chain.make(status, wishes, nanos, frame);
            made.ticks.add(tick);
            made.frames.add(frame);
            if (random.nextInt(40) == 0) {
                int leftOut = 1 + random.nextInt(30);
                watch.leftOut(tick + 1, leftOut);
                tick += leftOut;
            }
        }
    }

    private static Wishes afterAsks(Wishes before, long nanos, Random random) {
        float[] levels = {random.nextBoolean() ? Float.NaN : random.nextFloat()};
        float[] pixels = new float[4 * config().setup().pixels()];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = random.nextInt(3) == 0 ? Float.NaN : random.nextFloat();
        }
        long until = nanos + random.nextInt(2_000_000_000);
        return switch (random.nextInt(7)) {
            case 0 -> before.withBrightness(random.nextDouble());
            case 1 -> before.withQuiet(random.nextDouble());
            case 2 -> before.withLevels(levels);
            case 3 -> before.withLook("busy", until);
            case 4 -> before.withPixels(pixels, until);
            case 5 -> before.acknowledged();
            default -> before.reset();
        };
    }

    /** A message may come between a frame's time and its making. */
    private static PrinterStatus afterMessages(PrinterStatus before, long nanos, Random random) {
        long at = nanos - 9_000_000 + random.nextInt(10_000_000);
        PrinterStatus after =
                random.nextInt(3) == 0 ? before.withState(STATES.get(random.nextInt(STATES.size())), at) : before;
        return after.withReading(Quantity.BED_SETPOINT, 60, at)
                .withReading(Quantity.BED_ACTUAL, 22 + random.nextInt(38), at)
                .withReading(Quantity.JOB_PROGRESS, random.nextDouble(), at + 1000);
    }

    @Test
    void aRecordingOfAnotherRateIsRefused() throws IOException {
        Timeline timeline = Timeline.read(List.of("{\"tick\": 300, \"at_s\": 9.99}"), "birch.jsonl");
        IOException e = assertThrows(IOException.class, () -> Replay.of(config(), timeline));
        assertEquals(
                "birch.jsonl: was not recorded at 60 frames a second; give the configuration that it was recorded with",
                e.getMessage());
    }

    @Test
    void aLineWithoutATickIsShownInTheFirstFrameThatIsNotBeforeIt() throws IOException {
        Timeline timeline = Timeline.read(List.of("{\"at_s\": 0.1, \"state\": \"done\"}"), "hand.jsonl");
        Replay replay = Replay.of(config(), timeline);
        Frame frame = frame(config());
        for (int tick = 0; tick < 10; tick++) {
            replay.next(frame);
            assertEquals(tick < 6 ? PrinterState.SILENT : PrinterState.DONE, replay.state(), "frame " + tick);
        }
    }

    @Test
    void theExampleGoesThroughAWholeJob() throws IOException {
        Timeline job = Timeline.example();
        Replay replay = Replay.of(config(), job);
        Frame frame = frame(config());
        Set<PrinterState> shown = EnumSet.noneOf(PrinterState.class);
        while (replay.nanos() < job.seconds() * 1e9) {
            replay.next(frame);
            shown.add(replay.state());
        }
        assertEquals(EnumSet.complementOf(EnumSet.of(PrinterState.STOPPED)), shown);
        assertEquals(40, job.seconds(), 5);
    }

    @Test
    void aSweepMovesEverySignalFromEndToEnd() {
        List<PrinterStatus> told = SignalSweep.timeline(12, 22, List.of()).entries().stream()
                .map(entry -> entry.status())
                .toList();
        PrinterStatus first = told.get(0);
        PrinterStatus last = told.get(told.size() - 1);
        assertEquals(0, first.value(Quantity.JOB_PROGRESS));
        assertEquals(1, last.value(Quantity.JOB_PROGRESS));
        assertEquals(0, last.value(Quantity.JOB_LEFT));
        assertEquals(22, first.value(Quantity.BED_ACTUAL));
        assertEquals(last.value(Quantity.BED_SETPOINT), last.value(Quantity.BED_ACTUAL));
        assertEquals(last.value(Quantity.NOZZLE_SETPOINT), last.value(Quantity.NOZZLE_ACTUAL));
        assertEquals(last.value(Quantity.CHAMBER_SETPOINT), last.value(Quantity.CHAMBER_ACTUAL));
    }

    @Test
    void linesAreToldByFileAndNumber() throws IOException {
        Path file = folder.resolve("bad.jsonl");
        assertComplaint(file, file + ": there is no such file; give one that run --record has written");
        Files.writeString(file, "{\"at_s\": 1}\n\n{\"at_s\": 2, \"state\": \"bsy\"}\n");
        assertComplaint(
                file,
                file + ":3: has the state \"bsy\", which is not known; there are silent, idle, warming,"
                        + " printing, held, done, stopped, fault");
        Files.writeString(file, "{\"at_s\": 2}\n{\"at_s\": 1}\n");
        assertComplaint(file, file + ":2: is earlier than the line above it; sort the lines by time");
        Files.writeString(file, "{\"tick\": 9, \"at_s\": 1}\n{\"tick\": 8, \"left_out\": 1}\n");
        assertComplaint(file, file + ":2: is earlier than the line above it; sort the lines by time");
        Files.write(file, new byte[] {(byte) 0xFF});
        assertComplaint(file, file + ": is not UTF-8 text; give a file of JSON lines");
        assertComplaint(folder, folder + ": is a folder; give a file of JSON lines that you may read");
    }

    private static void assertComplaint(Path file, String complaint) {
        assertEquals(
                complaint,
                assertThrows(IOException.class, () -> Timeline.read(file)).getMessage());
    }

    @Test
    void aSweepHeatsUpHeatersOfTheUsersOwn() {
        OwnHeater heater = new OwnHeater("nozzle2");
        PrinterStatus swept = SignalSweep.timeline(12, 22, List.of(heater.actual(), heater.setpoint()))
                .entries()
                .get(12)
                .status();
        assertEquals(117, swept.own("nozzle2.actual_C").value(), 1e-9);
        assertEquals(212, swept.own("nozzle2.setpoint_C").value(), 1e-9);
    }

    private static final String TWO = """
            broker.url = "mqtt://127.0.0.1"
            controller.port = "/dev/ttyACM0"
            supply.ceiling_mA = 300
            strip.pixels = 20
            printers.alder.readings.job.progress.topic = "shop/alder/job"
            printers.birch.readings.job.progress.topic = "shop/birch/job"
            """;

    /** Frames with news of either printer, of both in one frame, and with the fault of one acknowledged. */
    @Test
    void aRecordingOfTwoPrintersGivesTheSameBytes() throws IOException, ConfigException {
        Config config = ConfigFile.read(TWO, "two.toml");
        Path file = folder.resolve("two.jsonl");
        Random random = new Random(3);
        Chain chain = Chain.of(config);
        List<Frame> made = new ArrayList<>();
        Statuses statuses = Statuses.NOTHING_HEARD;
        Wishes wishes = Wishes.NONE;
        try (Recorder recorder = new Recorder(file)) {
            recorder.start(0);
            for (long tick = 0; tick < 1200; tick++) {
                long nanos = Ticks.nanos(tick, config.framesPerSecond());
                if (tick > 0 && random.nextInt(12) == 0) {
                    for (String printer : random.nextBoolean() ? List.of("alder", "birch") : List.of("birch")) {
                        PrinterStatus after = afterMessages(statuses.of(printer), nanos, random);
                        statuses = statuses.with(printer, after);
                    }
                    recorder.shown(tick, statuses);
                }
                if (random.nextInt(100) == 0) {
                    wishes = wishes.withCounts(Wish.ACKNOWLEDGEMENTS_OF, Map.of("birch", tick));
                    recorder.asked(tick, wishes);
                }
                Frame frame = frame(config);
                chain.make(statuses, wishes, nanos, frame);
                made.add(frame);
            }
        }
        Replay replay = Replay.of(config, Timeline.read(file));
        Frame frame = frame(config);
        for (int i = 0; i < made.size(); i++) {
            replay.next(frame);
            assertArrayEquals(made.get(i).strip(), frame.strip(), "frame " + i);
        }
        IOException e = assertThrows(IOException.class, () -> Replay.of(config(), Timeline.read(file)));
        assertTrue(e.getMessage().contains("mentions the printer "), e.getMessage());
    }

    /** As in the handwritten example. */
    @Test
    void aLineWithoutANameIsAboutAllPrinters() throws IOException, ConfigException {
        Replay replay = Replay.of(
                ConfigFile.read(TWO, "two.toml"),
                Timeline.read(List.of("{\"at_s\": 0, \"state\": \"done\"}"), "hand.jsonl"));
        Frame frame = frame(ConfigFile.read(TWO, "two.toml"));
        for (int i = 0; i < 10; i++) {
            replay.next(frame);
        }
        assertArrayEquals(
                Arrays.copyOfRange(frame.strip(), 0, 30), Arrays.copyOfRange(frame.strip(), 30, 60), "both alike");
        assertEquals("done", replay.look());
    }
}
