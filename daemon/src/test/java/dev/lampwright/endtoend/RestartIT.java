package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A service that is killed and started again as fast as it comes up does not flash. Source: WCAG 2.2, success criterion 2.3.1. */
class RestartIT {
    private static final int RESTARTS = 4;
    /** The process's own start is known to a hundredth of a second. */
    private static final long QUIET_NANOS = TimeUnit.MILLISECONDS.toNanos(980);

    @TempDir
    private Path folder;

    @Test
    @Timeout(120)
    void theStripIsLeftAloneUntilTheProcessIsASecondOld() throws IOException {
        try (PtyController controller = PtyController.pluggedIn(folder)) {
            Path config = folder.resolve("rowan.toml");
            for (int restart = 0; restart < RESTARTS; restart++) {
                Files.writeString(config, config(controller.port(), restart % 2 == 0 ? "white" : "black"));
                controller.recording().clear();
                long started = System.nanoTime();
                try (RunningDaemon daemon = RunningDaemon.start(config)) {
                    Await.until("light", () -> controller.recording().lastIs(Entry::fromHost));
                    daemon.signal("KILL");
                }
                List<Entry> shown = controller.recording().entries();
                Entry first = shown.stream().filter(Entry::fromHost).findFirst().orElseThrow();
                assertTrue(first.nanos() - started >= QUIET_NANOS, (first.nanos() - started) / 1_000_000 + " ms");
                assertEquals(
                        1,
                        shown.stream()
                                .filter(Entry::fromHost)
                                .map(Entry::strip)
                                .distinct()
                                .count());
            }
        }
    }

    private static String config(Path port, String colour) {
        return """
                broker.url = "mqtt://127.0.0.1:9"
                controller = { port = "%s", baud = 500000 }
                strip.pixels = 8
                printer.state = { topic = "shop/rowan/job", idle = ["IDLE"] }
                [looks.plain]
                layers = [{ colour = "%s" }]
                [[cues]]
                look = "plain"
                fade_s = 0
                """.formatted(port, colour);
    }
}
