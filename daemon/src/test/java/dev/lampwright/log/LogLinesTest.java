package dev.lampwright.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.LoggingEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogLinesTest {
    private static LoggingEvent event(Level level, String message, Throwable thrown) {
        Logger logger = new LoggerContext().getLogger(LogLinesTest.class);
        return new LoggingEvent(LogLinesTest.class.getName(), logger, level, message, thrown, new Object[] {3, 4});
    }

    private static String journal(Level level, String message) {
        return new LogLayouts.ForJournal().doLayout(event(level, message, null));
    }

    /** Prefixes of sd-daemon(3): SD_ERR 3, SD_WARNING 4, SD_INFO 6, SD_DEBUG 7. */
    @Test
    void theJournalGetsPrioritiesAndNoTime() {
        assertEquals("<3>dark\n", journal(Level.ERROR, "dark"));
        assertEquals("<4>3 of 4 mA\n", journal(Level.WARN, "{} of {} mA"));
        assertEquals("<6>lit\n", journal(Level.INFO, "lit"));
        assertEquals("<7>a\n", journal(Level.DEBUG, "a"));
        assertEquals("<7>b\n", journal(Level.TRACE, "b"));
    }

    @Test
    void everyLineOfATraceHasThePriority() {
        LoggingEvent event = event(Level.ERROR, "no frame", new IllegalStateException("no zone"));
        List<String> lines = new LogLayouts.ForJournal().doLayout(event).lines().toList();
        assertEquals("<3>no frame", lines.get(0));
        assertEquals("<3>java.lang.IllegalStateException: no zone", lines.get(1));
        assertTrue(lines.size() > 2 && lines.stream().allMatch(line -> line.startsWith("<3>")));
    }

    @Test
    void peopleGetTheTime() {
        LoggingEvent event = event(Level.WARN, "dim", null);
        Instant time = ZonedDateTime.of(2026, 11, 25, 7, 5, 9, 0, ZoneId.systemDefault())
                .toInstant();
        event.setInstant(time);
        assertEquals("07:05:09 WARN  dim" + System.lineSeparator(), new LogLayouts.ForPeople().doLayout(event));
    }

    /** JOURNAL_STREAM of systemd.exec(5): device and inode, decimal. */
    @Test
    void knowsTheJournalByItsStream(@TempDir Path folder) throws IOException {
        Path file = Files.createFile(folder.resolve("stream"));
        Path other = Files.createFile(folder.resolve("other"));
        String stream = Files.getAttribute(file, "unix:dev") + ":" + Files.getAttribute(file, "unix:ino");
        assertTrue(JournalStream.isAt(stream, file));
        assertFalse(JournalStream.isAt(stream, other));
        assertFalse(JournalStream.isAt("", file));
        assertFalse(JournalStream.isAt("9:x", folder.resolve("none")));
    }

    @Test
    void logbackIsSetUpByThis() {
        LoggerContext context = new LoggerContext();
        new LogSetup().configure(context);
        assertFalse(context.getLogger("io.netty.channel.X").isWarnEnabled());
        assertTrue(context.getLogger("io.netty.channel.X").isErrorEnabled());
        assertTrue(context.getLogger("dev.lampwright.X").isInfoEnabled());
        assertFalse(context.getLogger("dev.lampwright.X").isDebugEnabled());
    }
}
