package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.EmberPaint;
import dev.lampwright.testing.MotionsPage;
import dev.lampwright.testing.MotionsPage.Motion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    private static final Path FOLDER = Path.of("doc/motions");
    private static final Path JOB = FOLDER.resolve("job.jsonl");
    private static final long MOST_BYTES = 1_500_000;

    @TempDir
    private Path folder;

    private static List<Motion> motions() {
        return MotionsPage.motions();
    }

    /** The page's file, with more looks in it. */
    private Path file(String looks) throws IOException {
        return Files.writeString(folder.resolve("alder.toml"), MotionsPage.file() + looks);
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
                Pattern.compile("\\| `" + key + "` \\| [^|]+ \\| ([0-9.]+);").matcher(MotionsPage.text());
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
        Matcher links = Pattern.compile("\\(motions/([^)]+\\.gif)\\)").matcher(MotionsPage.text());
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
