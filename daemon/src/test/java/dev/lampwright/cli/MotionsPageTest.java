package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.EmberPaint;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The page of motions is right: each animation is what {@code render} draws for the lines next to it, byte for byte, and all of them pass
 * {@code check}. {@code -Dpictures.write=true} draws them again.
 */
class MotionsPageTest {
    private static final Path PAGE = Path.of("doc/motions.md");
    private static final Path FOLDER = Path.of("doc/motions");
    private static final Path JOB = FOLDER.resolve("job.jsonl");
    private static final long MOST_BYTES = 1_500_000;

    private static final String PICTURE =
            "!\\[[^\\]]+\\]\\(motions/([a-z0-9-]+)\\.gif\\) <!-- ([0-9]+) s(?:, ([0-9]+) a second)? -->";
    private static final Pattern ENTRY = Pattern.compile(PICTURE + "\n\n```toml\n(.*?)```", Pattern.DOTALL);
    private static final Pattern ROW = Pattern.compile("\\| " + PICTURE + " \\| `(rhythm = \"[^\"]+\")` \\|");
    private static final Pattern FILE = Pattern.compile("```toml\n(\\[strip\\].*?)```", Pattern.DOTALL);
    private static final String CONNECTED = """
            broker.url = "mqtt://alder"
            printer.readings.job.progress.topic = "shop/alder/job"
            printer.readings.print_speed = { topic = "shop/alder/job", at = "/speed", unit = "percent", range = [50, 150] }
            printer.state = { topic = "shop/alder/job", fault = ["ALARM"] }
            controller.port = "/dev/ttyACM0"
            supply.ceiling_mA = 2500
            """;

    @TempDir
    private Path folder;

    /** A picture of the page, and the text next to it. */
    private record Motion(String name, String seconds, String rate, String text) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static String page() {
        try {
            return Files.readString(PAGE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Motion> motions() {
        List<Motion> motions = new ArrayList<>();
        Matcher entry = ENTRY.matcher(page());
        while (entry.find()) {
            motions.add(motion(entry, entry.group(4)));
        }
        Matcher row = ROW.matcher(page());
        while (row.find()) {
            String layer = "{ colour = \"gold\", " + row.group(4) + " }";
            motions.add(motion(row, "[looks." + row.group(1) + "]\nlayers = [" + layer + "]\n"));
        }
        return motions;
    }

    private static Motion motion(Matcher found, String text) {
        String rate = found.group(3) == null ? "10" : found.group(3);
        return new Motion(found.group(1), found.group(2), rate, text);
    }

    /** The page's file, with more looks in it. */
    private Path file(String looks) throws IOException {
        Matcher file = FILE.matcher(page());
        assertTrue(file.find());
        return Files.writeString(folder.resolve("alder.toml"), CONNECTED + file.group(1) + looks);
    }

    @ParameterizedTest
    @MethodSource("motions")
    void isWhatItsLinesDraw(Motion motion) throws IOException {
        Path picture = FOLDER.resolve(motion.name() + ".gif");
        Path drawn = folder.resolve("drawn.gif");
        Run run = Run.of(
                "render",
                file(motion.text()).toString(),
                "--look=" + motion.name(),
                "--status=" + JOB,
                "--seconds=" + motion.seconds(),
                "--frames-per-s=" + motion.rate(),
                "--bare",
                "--out=" + drawn);
        assertEquals(0, run.status(), run.err());
        byte[] now = Files.readAllBytes(drawn);
        if (Boolean.getBoolean("pictures.write")) {
            Files.write(picture, now);
        }
        assertArrayEquals(now, Files.readAllBytes(picture), "written with -Dpictures.write=true");
    }

    @Test
    void allPassTheCheck() throws IOException {
        StringBuilder all = new StringBuilder();
        motions().forEach(motion -> all.append(motion.text()));
        Run run = Run.of("check", file(all.toString()).toString());
        assertEquals(0, run.status(), run.err());
    }

    @Test
    void theTableOfTheFireSaysWhatIsUsual() throws IOException {
        EmberPaint usual = EmberPaint.USUAL;
        Map.of(
                        "brightest_K", usual.brightestK(),
                        "strike_K", usual.strikeK(),
                        "strikes_per_px_s", usual.strikesPerPixelSecond(),
                        "diffusion_px2_per_s", usual.diffusion(),
                        "time_constant_s", usual.timeConstantSeconds())
                .forEach((key, value) -> assertEquals(value, usual(key), key));
    }

    private static double usual(String key) {
        Matcher row =
                Pattern.compile("\\| `" + key + "` \\| [^|]+ \\| ([0-9.]+);").matcher(page());
        assertTrue(row.find(), key);
        return Double.parseDouble(row.group(1));
    }

    @Test
    void everyPictureIsOfTheLookBesideItAndNoneIsLeftOver() throws IOException {
        Set<String> names = new TreeSet<>();
        for (Motion motion : motions()) {
            assertTrue(motion.text().startsWith("[looks." + motion.name() + "]\n"), motion.name());
            assertTrue(names.add(motion.name() + ".gif"), motion.name() + " appears twice");
        }
        Matcher links = Pattern.compile("\\(motions/([^)]+\\.gif)\\)").matcher(page());
        Set<String> linked = new HashSet<>();
        while (links.find()) {
            linked.add(links.group(1));
        }
        assertEquals(linked, names);
        Set<String> there = new TreeSet<>();
        long bytes = 0;
        try (Stream<Path> files = Files.list(FOLDER)) {
            for (Path each :
                    files.filter(path -> path.toString().endsWith(".gif")).toList()) {
                there.add(each.getFileName().toString());
                bytes += Files.size(each);
            }
        }
        assertEquals(names, there);
        assertTrue(names.size() >= 30, names.size() + " motions");
        assertTrue(bytes < MOST_BYTES, bytes + " bytes");
    }
}
