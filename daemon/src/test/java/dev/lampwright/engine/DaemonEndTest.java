package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Recording;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the controller shows when the daemon has ended. */
class DaemonEndTest {
    private final Recording shown = new Recording();

    private void runAndEnd(String controllerKeys) {
        Config config = read("""
                printer.readings.job.progress.topic = "shop/alder/job"
                broker.url = "mqtt://127.0.0.1:%d"
                controller = { port = "memory"%s }
                strip.pixels = 8
                looks.silent = { layers = [{ colour = "white" }] }
                """.formatted(FreePort.find(), controllerKeys));
        MemoryLine line = new MemoryLine(
                new MemoryController(MemoryController.BOARD, shown),
                config.controller().baud(),
                System::nanoTime);
        try (Daemon daemon = new Daemon(config, next -> line)) {
            daemon.start();
            Await.until("full light, once it has faded in", this::isFullAndSteady);
            shown.clear();
        }
    }

    private boolean isFullAndSteady() {
        List<Integer> levels = levelsFromHost();
        int last = levels.size() - 1;
        return last > 0 && levels.get(last) > 100 && levels.get(last).equals(levels.get(last - 1));
    }

    private static Config read(String text) {
        try {
            return ConfigFile.read(text, "alder.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    private static int brightest(Recording.Entry entry) {
        return entry.strip().stream().mapToInt(Integer::intValue).max().orElse(0);
    }

    private List<Integer> levelsFromHost() {
        return shown.entries().stream()
                .filter(Recording.Entry::fromHost)
                .map(DaemonEndTest::brightest)
                .toList();
    }

    @Test
    void lightFadesOutAndStaysOutWhateverIsShownWithoutAHost() {
        runAndEnd(", when_silent = \"keep\"");
        List<Integer> levels = levelsFromHost();
        for (int i = 1; i < levels.size(); i++) {
            assertTrue(levels.get(i) <= levels.get(i - 1), levels.toString());
        }
        assertTrue(levels.stream().distinct().count() > 4, "a fade and no step: " + levels);
        assertEquals(Light.DARK, shown.last().light());
        assertEquals(0, brightest(shown.last()));
    }

    @Test
    void theBeaconIsLeftWhereThatIsAskedFor() {
        runAndEnd(", at_end = \"when_silent\"");
        assertTrue(levelsFromHost().stream().allMatch(level -> level > 100), "no fade");
        assertEquals(Light.BEACON, shown.last().light());
    }
}
