package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Swatch;
import dev.lampwright.config.Swatches;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The page of swatches says of each what the swatch says of itself, and its picture is exactly what {@code render} draws, byte for byte.
 * {@code -Dpictures.write=true} writes both again.
 */
class LooksPageTest {
    private static final Path PAGE = Path.of("doc/looks.md");
    private static final Path FOLDER = Path.of("doc/looks");
    private static final Path JOB = Path.of("doc/motions/job.jsonl");
    private static final Path COOLING = FOLDER.resolve("cooling.jsonl");
    private static final String END = "<!-- swatches -->\n";
    private static final long MOST_BYTES = 400_000;
    private static final Shot SLOW = new Shot(12, 1, JOB);
    private static final Shot WHOLE_JOB = new Shot(8, 2, JOB);
    private static final Map<String, Shot> SHOTS = Map.of(
            "toast", WHOLE_JOB,
            "jam-pan", WHOLE_JOB,
            "honey-jar", WHOLE_JOB,
            "measuring-stick", WHOLE_JOB,
            "long-day", WHOLE_JOB,
            "night-shift", WHOLE_JOB,
            "tea-break", WHOLE_JOB,
            "cooling-rack", new Shot(8, 2, COOLING),
            "red-lantern", new Shot(4, 4, JOB),
            "tripped-fuse", new Shot(6, 4, JOB));

    @TempDir
    private Path folder;

    /** How a picture is taken: for how long, how many per second, and what the printer reports. */
    private record Shot(int seconds, int rate, Path status) {}

    private static Stream<String> swatches() {
        return Swatches.names().stream();
    }

    @ParameterizedTest
    @MethodSource("swatches")
    void aPictureIsWhatTheSwatchDraws(String name) throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), """
                broker.url = "mqtt://alder"
                printer.state = { topic = "shop/alder/job", fault = ["ALARM"] }
                controller.port = "/dev/ttyACM0"
                supply.ceiling_mA = 2500
                strip.pixels = 30
                """);
        Shot shot = SHOTS.getOrDefault(name, SLOW);
        Path drawn = folder.resolve("drawn.gif");
        Run run = Run.of(
                "render",
                file.toString(),
                "--look=" + name,
                "--status=" + shot.status(),
                "--seconds=" + shot.seconds(),
                "--frames-per-s=" + shot.rate(),
                "--bare",
                "--out=" + drawn);
        assertEquals(0, run.status(), run.err());
        byte[] now = Files.readAllBytes(drawn);
        Path picture = FOLDER.resolve(name + ".gif");
        if (Boolean.getBoolean("pictures.write")) {
            Files.write(picture, now);
        }
        assertArrayEquals(now, Files.readAllBytes(picture), "written with -Dpictures.write=true");
    }

    @Test
    void theListIsThatOfTheSwatches() throws IOException {
        String page = Files.readString(PAGE);
        int end = page.indexOf(END) + END.length();
        String expected = page.substring(0, end) + list();
        if (Boolean.getBoolean("pictures.write")) {
            Files.writeString(PAGE, expected);
        }
        assertEquals(expected, Files.readString(PAGE), "written with -Dpictures.write=true");
    }

    private static String list() {
        StringBuilder list = new StringBuilder();
        String use = "";
        for (String name : Swatches.names()) {
            Swatch swatch = Swatches.named(name);
            if (!swatch.use().equals(use)) {
                use = swatch.use();
                String heading = LookBook.heading(use);
                list.append("\n## ")
                        .append(Character.toUpperCase(heading.charAt(0)))
                        .append(heading, 1, heading.length());
                list.append("\n\n| | | |\n| --- | --- | --- |\n");
            }
            list.append("| `")
                    .append(name)
                    .append("` | ![")
                    .append(alt(swatch))
                    .append("](looks/")
                    .append(name);
            list.append(".gif) | ").append(swatch.sentence()).append(" |\n");
        }
        return list.toString();
    }

    /** The sentence without its full stop. */
    private static String alt(Swatch swatch) {
        String sentence = swatch.sentence();
        return sentence.substring(0, sentence.length() - 1);
    }

    @Test
    void thereIsAPictureOfEachAndTheyAreSmall() throws IOException {
        Set<String> there;
        long bytes = 0;
        try (Stream<Path> files = Files.list(FOLDER)) {
            there = files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(".gif"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
        for (String file : there) {
            bytes += Files.size(FOLDER.resolve(file));
        }
        assertEquals(swatches().map(name -> name + ".gif").collect(Collectors.toCollection(TreeSet::new)), there);
        assertTrue(bytes < MOST_BYTES, bytes + " bytes");
    }
}
