package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Swatches;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LooksCommandTest {
    private static final String BARE = """
            broker.url = "mqtt://alder"
            printer.state = { topic = "shop/alder/job", fault = ["ALARM"] }
            controller.port = "/dev/ttyACM0"
            supply.ceiling_mA = 2500
            strip.pixels = 30
            """;
    private static final String MORE_LIGHTS = """
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            glow = { channels = [1, 2, 3], volts = 12, full_mA = 300 }
            """;

    @TempDir
    private Path folder;

    private static Stream<String> swatches() {
        return Swatches.names().stream();
    }

    @Test
    void listsAllWithASentenceEach() {
        Run run = Run.of("looks");
        assertEquals(0, run.status(), run.err());
        String flowing = run.out().replaceAll("\\s+", " ");
        swatches().forEach(name -> {
            assertTrue(run.out().contains("\n  " + name + " "), name);
            assertTrue(flowing.contains(Swatches.named(name).sentence()), name);
        });
        assertTrue(run.out().lines().allMatch(line -> line.length() <= 80), run.out());
        assertFalse(run.out().contains("\u001b"), "a test has no terminal");
    }

    private static List<String> list(ColourDepth depth, int columns) throws ConfigException, IOException {
        return new LookBook(StandInLights.of(LookBook.PICTURE_COLUMNS), StandInLights.bare(), depth, columns).list();
    }

    @Test
    void hasAPictureOfEachWhereTheTerminalShowsColours() throws ConfigException, IOException {
        List<String> lines = list(ColourDepth.FULL, 80);
        long blocks = String.join("", lines).chars().filter(c -> c == '█').count();
        assertEquals((long) LookBook.PICTURE_COLUMNS * Swatches.names().size(), blocks);
        assertTrue(lines.stream().allMatch(line -> plain(line).length() <= 80));
    }

    @Test
    void aNarrowTerminalGetsWordsAlone() throws ConfigException, IOException {
        List<String> lines = list(ColourDepth.FULL, 50);
        assertFalse(String.join("", lines).contains("\u001b"));
        assertTrue(lines.stream().allMatch(line -> line.length() <= 50), String.join("\n", lines));
    }

    private static String plain(String line) {
        return line.replaceAll("\u001b\\[[0-9;]*m", "");
    }

    @ParameterizedTest
    @CsvSource({"120, 120", "'', 80", "0, 80", "x, 80", "99999999999, 80"})
    void theWidthIsWhatAShellTells(String told, int columns) {
        assertEquals(columns, LooksCommand.columns(Map.of("COLUMNS", told)));
    }

    @ParameterizedTest
    @MethodSource("swatches")
    void whatIsCopiedDrawsTheSame(String name) throws IOException, ConfigException {
        assertCopyDrawsTheSame(name, BARE);
        assertCopyDrawsTheSame(name, BARE + MORE_LIGHTS);
    }

    private void assertCopyDrawsTheSame(String name, String text) throws IOException, ConfigException {
        Path file = Files.writeString(folder.resolve("alder.toml"), text);
        Run run = Run.of("looks", name, "--toml", "--config=" + file);
        assertEquals(0, run.status(), run.err());
        Config config = ConfigFile.read(text, "alder.toml");
        Config copied = ConfigFile.read(text + run.out(), "alder.toml");
        assertTrue(copied.looks().containsKey(name));
        LookSample before = LookSample.of(config, config.light().look(name).orElseThrow(), 6);
        LookSample after = LookSample.of(copied, copied.looks().get(name), 6);
        for (int i = 0; i < before.strips().size(); i++) {
            assertArrayEquals(before.strips().get(i), after.strips().get(i));
        }
        assertEquals(config.light().look(name).orElseThrow(), copied.looks().get(name), "lamps and all");
    }

    @Test
    void saysWhatOneTakesAndFollows() {
        String text = Run.of("looks", "honey-jar").out().replaceAll("\\s+", " ");
        assertTrue(text.contains("follows job.progress, and lights the white light work."), text);
        assertTrue(text.matches(".*about [0-9]+ % of the strip's full current.*"), text);
    }

    @Test
    void oneHasTimeDownItsPicture() throws ConfigException, IOException {
        Config lights = StandInLights.of(LookBook.PICTURE_COLUMNS);
        LookBook book = new LookBook(lights, lights, ColourDepth.INDEXED, 80);
        List<String> lines = book.page(Swatches.named("sea-mist"));
        assertEquals(12, lines.stream().filter(line -> line.contains("█")).count());
        assertEquals(" 12 s ", plain(lines.get(13)).substring(0, 6));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "sea-mits        | NAME is sea-mits, which is not a swatch; did you mean sea-mist?",
                "zzz             | NAME is zzz, which is not a swatch; lampwright looks lists all of them",
                "--toml          | --toml goes with the NAME of a swatch",
                "--config=a.toml | --config goes with --toml",
            })
    void saysWhatIsWrong(String argument, String complaint) {
        Run run = Run.of("looks", argument);
        assertEquals(2, run.status());
        assertTrue(run.err().contains(complaint), run.err());
    }

    @Test
    void aProgramReadsJson() {
        var all = Json.read(Run.of("looks", "--json").out()).orElseThrow().path("swatches");
        assertEquals(Swatches.names().size(), all.size());
        assertEquals("porch-lamp", all.path(0).path("name").asText());
        var one = Json.read(Run.of("looks", "sea-mist", "--json").out()).orElseThrow();
        assertEquals("calm", one.path("use").asText());
        assertTrue(one.path("toml").asText().contains("[looks.sea-mist]"));
    }
}
