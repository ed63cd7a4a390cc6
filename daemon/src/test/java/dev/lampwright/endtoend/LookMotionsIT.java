package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.engine.Chain;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.signal.Signal;
import dev.lampwright.testing.MotionsPage;
import dev.lampwright.testing.MotionsPage.Motion;
import dev.lampwright.toml.TomlEditor;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is on the page of motions can be made in the look editor: a motion is composed from nothing by the page's own controls in a real
 * browser, and saved by the real jar. What is in the file then means the same as the lines of the page, and makes the same light.
 */
@Timeout(600)
class LookMotionsIT {
    private static final int RATE = 10;
    private static final int FRAMES = 40;

    /** Every fourth motion is made, since all of them take two minutes; with {@code -Dmotions.all=true}, each is. */
    private static final int EVERY = Boolean.getBoolean("motions.all") ? 1 : 4;

    /** Signals that are held while the light is compared, as shares of their range. */
    private static final double[] LEVELS = {0, 0.42, 1};

    private static final String ZONES = """
            [zones]
            left = "14-0"
            right = "15-29"
            ends = "0-29 mirrored"
            """;

    @TempDir
    private Path folder;

    private static String forMotions(String text) {
        return text.replace("[zones]\n", ZONES)
                .replace("unit = \"percent\", range = [0, 200]", "unit = \"percent\", range = [50, 150]");
    }

    @Test
    void eachMotionIsMadeFromNothingOnThePage() throws Exception {
        String compose = script();
        try (PageBench bench = new PageBench(folder, LookMotionsIT::forMotions)) {
            Editor editor = new Editor(bench);
            editor.open("idle");
            String before = Files.readString(bench.config());
            List<Motion> motions = MotionsPage.motions();
            assertTrue(motions.size() >= 60, motions.size() + " motions");
            List<String> wrong = new ArrayList<>();
            for (int i = 0; i < motions.size(); i += EVERY) {
                Motion motion = motions.get(i);
                Object answer = bench.browser().await(compose, motion.name(), json(motion));
                assertEquals("", answer, motion.name());
                String written = before + "\n" + motion.text();
                differences(motion.name(), read(bench, Files.readString(bench.config())), read(bench, written))
                        .forEach(wrong::add);
                Files.writeString(bench.config(), before);
            }
            assertEquals(List.of(), wrong);
            assertEquals(List.of(), editor.complaints());
        }
    }

    private static String script() throws IOException {
        try (InputStream in = LookMotionsIT.class.getResourceAsStream("compose.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** The look of the page's lines, for the script. */
    private static String json(Motion motion) throws IOException {
        Object look = TomlEditor.of(motion.text())
                .get(List.of("looks", motion.name()))
                .orElseThrow();
        return new ObjectMapper().writeValueAsString(look);
    }

    private static Config read(PageBench bench, String text) throws ConfigException {
        return ConfigFile.read(text, bench.config());
    }

    private static List<String> differences(String look, Config made, Config written) {
        List<String> differences = new ArrayList<>();
        if (!written.looks().get(look).equals(made.looks().get(look))) {
            differences.add(look + " is " + made.looks().get(look) + " and was to be "
                    + written.looks().get(look));
        }
        for (double level : LEVELS) {
            assertArrayEquals(light(written, look, level), light(made, look, level), look + " at " + level);
        }
        return differences;
    }

    /** The bytes of all frames, as the chain makes them that lights the strip. */
    private static byte[] light(Config config, String look, double level) {
        Chain chain =
                Chain.of(config.setup(), config.light().showing(config.looks().get(look)), RATE);
        chain.hold(held(config, level));
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        ByteArrayOutputStream light = new ByteArrayOutputStream();
        for (int i = 0; i < FRAMES; i++) {
            chain.make(PrinterStatus.nothingHeard(), TimeUnit.SECONDS.toNanos(i) / RATE, frame);
            light.writeBytes(frame.strip());
        }
        return light.toByteArray();
    }

    private static Map<Signal, Double> held(Config config, double level) {
        List<Signal> signals = new ArrayList<>(Signal.all());
        signals.addAll(config.light().own());
        Map<Signal, Double> held = new HashMap<>();
        signals.forEach(signal -> held.put(
                signal,
                Double.isFinite(signal.low()) && Double.isFinite(signal.high())
                        ? signal.low() + level * (signal.high() - signal.low())
                        : 200 * level));
        return held;
    }
}
