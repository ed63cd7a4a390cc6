package dev.lampwright.cli;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.colour.Srgb;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.replay.Replay;
import dev.lampwright.tool.replay.Timeline;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RenderCommandTest {
    private static final String FILE = """
            frames_per_s = 50
            broker.url = "mqtt://127.0.0.1"
            printer.state = { topic = "shop/birch/job", printing = ["RUN"] }
            controller.port = "/dev/ttyACM0"
            supply.ceiling_mA = 300
            strip = { pixels = 30, order = "BGRW" }
            [looks.mine]
            layers = [
              { paint = "ramp", colours = ["red", "white", "blue"], cycle_s = 3 },
              { colour = "white", extent = "bar", by = "job.progress" },
            ]
            [[cues]]
            state = "printing"
            look = "mine"
            """;
    private static final String STATUS = """
            {"at_s": 0, "state": "printing", "readings": {"job.progress": 0}}
            {"at_s": 0.5, "readings": {"job.progress": 0.4}}
            {"at_s": 1, "state": "held"}
            """;

    @TempDir
    private Path folder;

    private Path config() throws IOException {
        return Files.writeString(folder.resolve("birch.toml"), FILE);
    }

    private Path status() throws IOException {
        return Files.writeString(folder.resolve("birch.jsonl"), STATUS);
    }

    private Path out(String name) {
        return folder.resolve(name);
    }

    @ParameterizedTest
    @ValueSource(strings = {"silent", "idle", "warming", "printing", "held", "done", "stopped", "fault"})
    void everyBuiltInLookHasAPicture(String look) throws IOException {
        Path png = out(look + ".png");
        Run run = Run.of("render", "--look", look, "--seconds", "2", "--out", png.toString());
        assertEquals(new Run(0, png + ": 2 s, 60 pixels" + System.lineSeparator(), ""), run);
        assertAbove(400, ImageIO.read(png.toFile()).getWidth());
    }

    @Test
    void aWholeJobWithoutAnyOption() {
        Path png = out("job.png");
        Run run = Run.of("render", "--out", png.toString());
        assertEquals(new Run(0, png + ": 46 s, 60 pixels" + System.lineSeparator(), ""), run);
    }

    @Test
    void aMovingPicture() throws IOException {
        Path gif = out("mine.GIF");
        Run run = Run.of("render", config().toString(), "--look", "mine", "--seconds", "0.5", "--out", gif.toString());
        assertEquals(new Run(0, gif + ": 0.5 s, 30 pixels" + System.lineSeparator(), ""), run);
        assertEquals("GIF89a", new String(Files.readAllBytes(gif), 0, 6, StandardCharsets.US_ASCII));
    }

    @ParameterizedTest
    @ValueSource(strings = {"one.png", "one.gif"})
    void theSameCallGivesTheSameBytes(String name) throws IOException {
        Path again = out("again-" + name);
        for (Path path : new Path[] {out(name), again}) {
            Run.of("render", config().toString(), "--status", status().toString(), "--out", path.toString());
        }
        assertArrayEquals(Files.readAllBytes(out(name)), Files.readAllBytes(again));
    }

    /** One line per frame: a line shows what the bytes of its frame are, with white and order resolved. */
    @Test
    void thePictureShowsTheBytesThatWouldLeave() throws IOException, ConfigException {
        Path png = out("exact.png");
        String[] call = {
            "render", config().toString(), "--status", status().toString(), "--seconds", "2", "--frames-per-s", "50"
        };
        Run run = Run.of(Stream.concat(Stream.of(call), Stream.of("--out", png.toString()))
                .toArray(String[]::new));
        assertEquals(0, run.status(), run.err());
        BufferedImage image = ImageIO.read(png.toFile());
        Config config = ConfigFile.read(config());
        Replay replay = Replay.of(config, Timeline.read(status()));
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        int margin = 12;
        int left = margin + 30;
        int top = image.getHeight() - margin - 100;
        for (int row = 0; row < 100; row++) {
            replay.next(frame);
            for (int pixel = 0; pixel < 30; pixel++) {
                assertEquals(
                        shown(frame.strip(), 4 * pixel),
                        image.getRGB(left + 14 * pixel, top + row) & 0xFFFFFF,
                        "pixel " + pixel + " of frame " + row);
            }
        }
    }

    /** Blue, green, red and white, in this order. */
    private static int shown(byte[] strip, int at) {
        int tone = 0;
        for (int channel : new int[] {2, 1, 0}) {
            int level = Math.min(255, (strip[at + channel] & 0xFF) + (strip[at + 3] & 0xFF));
            tone = tone << 8 | (int) Math.round(255 * Srgb.encode((float) level / 255f));
        }
        return tone;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --look warmng            | --look is warmng; there are silent, idle, warming, printing, held, done, stopped, fault, fault-seen, fault-over, and those that lampwright looks lists
            --out a.jpg              | --out is a.jpg; give a name that ends in .png or .gif
            --seconds 0              | --seconds is 0.0; write a number of seconds above 0, at most 1000000
            --seconds NaN            | --seconds is NaN; write a number of seconds above 0, at most 1000000
            --seconds x              | --seconds is x; write a number, for instance 2.5
            --bare --out a.png       | --bare is for pictures that move; give --out a name that ends in .gif
            --frames-per-s 0         | --frames-per-s is 0.0; write a number above 0, here at most 60
            --frames-per-s 61        | --frames-per-s is 61.0; write a number above 0, here at most 60
            --frames-per-s 51 --out a.gif | --frames-per-s is 51.0; write a number above 0, here at most 50
            --seconds 36000 --out a.gif   | 36000.0 s at 20.0 a second are more than 6000 pictures or lines; give a smaller --seconds or --frames-per-s
            """)
    void calledWrongly(String options, String complaint) throws IOException {
        Run run = Run.of(Stream.concat(Stream.of("render"), Stream.of(options.split(" ")))
                .toArray(String[]::new));
        assertEquals(2, run.status());
        assertEquals(
                "lampwright render: " + complaint + "; see lampwright render --help" + System.lineSeparator(),
                run.err());
        assertEquals("", run.out());
        assertFalse(Files.exists(Path.of("a.gif")) || Files.exists(Path.of("a.jpg")), "nothing is written");
    }

    @Test
    void aStatusThatMakesNoSense() throws IOException {
        Path bad = Files.writeString(out("bad.jsonl"), STATUS + "{\"at_s\": 2, \"state\": \"busy\"}\n");
        Run run = Run.of(
                "render", "--status", bad.toString(), "--out", out("bad.png").toString());
        assertEquals(1, run.status());
        assertEquals(
                bad + ":4: has the state \"busy\", which is not known; there are silent, idle, warming, printing, held,"
                        + " done, stopped, fault" + System.lineSeparator(),
                run.err());
        assertFalse(Files.exists(out("bad.png")));
    }

    @Test
    void aConfigurationThatIsNotRight() throws IOException {
        Path bad = Files.writeString(out("bad.toml"), FILE.replace("pixels = 30", "pixels = 0"));
        Run run = Run.of("render", bad.toString(), "--out", out("bad.png").toString());
        assertEquals(1, run.status());
        assertTrue(run.err().startsWith(bad + ":6: strip.pixels: "), run.err());
    }

    @Test
    void aFolderThatIsNotThere() {
        Path png = out("nowhere").resolve("job.png");
        Run run = Run.of("render", "--look", "idle", "--seconds", "1", "--out", png.toString());
        assertEquals(1, run.status());
        assertEquals(
                png + ": its folder does not exist; give the path of a file to write" + System.lineSeparator(),
                run.err());
    }

    /** Linux, full(4): every write to it fails as on a disk without room. */
    @Test
    void aDiskThatIsFull() throws IOException {
        Path png = Files.createSymbolicLink(out("job.png"), Path.of("/dev/full"));
        Run run = Run.of("render", "--look", "idle", "--seconds", "1", "--out", png.toString());
        assertEquals(1, run.status());
        assertEquals(
                png + ": cannot be written: No space left on device; give another path" + System.lineSeparator(),
                run.err());
    }
}
