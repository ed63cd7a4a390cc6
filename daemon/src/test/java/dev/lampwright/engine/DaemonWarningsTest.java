package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

/** What the README says of the key that lifts the flash limit: the log warns of it at every start. */
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

    /** What is logged while a daemon is put together; it never runs. */
    private static List<String> warnings(String guard) {
        Logger logger = (Logger) LoggerFactory.getLogger(Daemon.class);
        ListAppender<ILoggingEvent> log = new ListAppender<>();
        log.start();
        logger.addAppender(log);
        try {
            MemoryController controller =
                    new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {});
            Daemon daemon = new Daemon(
                    Configs.of(30, "GRB", guard),
                    config -> new MemoryLine(controller, config.baud(), System::nanoTime));
            assertEquals(0, daemon.frames().frames());
        } finally {
            logger.detachAppender(log);
        }
        return log.list.stream()
                .filter(event -> event.getLevel() == Level.WARN)
                .map(ILoggingEvent::getFormattedMessage)
                .toList();
    }
}
