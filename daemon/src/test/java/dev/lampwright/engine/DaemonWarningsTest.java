package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.testing.CapturedLog;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the documents say about the key that lifts the flash limit: the log warns about it at every start. */
class DaemonWarningsTest {
    @Test
    void flashingThatIsAllowedIsWarnedOf() {
        List<String> warnings = warnings("guard.allow_flashing_that_can_cause_seizures = true");
        assertEquals(1, warnings.size());
        assertTrue(warnings.get(0).contains("can cause seizures"), warnings.get(0));
    }

    @Test
    void theUsualLimitsNeedNoWarning() {
        assertEquals(List.of(), warnings(""));
    }

    /** What is logged while a daemon is built; it never runs. */
    private static List<String> warnings(String guard) {
        try (CapturedLog log = new CapturedLog(Daemon.class.getName())) {
            MemoryController controller =
                    new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {});
            Daemon daemon = new Daemon(
                    Configs.of(30, "GRB", guard),
                    config -> new MemoryLine(controller, config.controller().baud(), System::nanoTime));
            assertEquals(0, daemon.frames().snapshot().frames());
            return log.lines().stream().filter(line -> line.startsWith("WARN ")).toList();
        }
    }
}
