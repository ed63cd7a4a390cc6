package dev.lampwright.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.CapturedLog;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;
import org.slf4j.event.Level;

class LogLineTest {
    private static LogEntry entry(Level level, String message) {
        return new LogEntry("dev.lampwright.Some", level, message, Optional.empty());
    }

    /** Prefixes of sd-daemon(3): SD_ERR 3, SD_WARNING 4, SD_INFO 6, SD_DEBUG 7. */
    @Test
    void theJournalGetsPrioritiesAndNoTime() {
        assertEquals("<3>dark\n", LogLine.journalLines(entry(Level.ERROR, "dark")));
        assertEquals("<4>dim\n", LogLine.journalLines(entry(Level.WARN, "dim")));
        assertEquals("<6>lit\n", LogLine.journalLines(entry(Level.INFO, "lit")));
        assertEquals("<7>a\n", LogLine.journalLines(entry(Level.DEBUG, "a")));
        assertEquals("<7>b\n", LogLine.journalLines(entry(Level.TRACE, "b")));
    }

    @Test
    void everyLineOfATraceHasThePriority() {
        LogEntry entry = new LogEntry("x", Level.ERROR, "no frame", Optional.of(new IllegalStateException("no zone")));
        List<String> lines = LogLine.journalLines(entry).lines().toList();
        assertEquals("<3>no frame", lines.get(0));
        assertEquals("<3>java.lang.IllegalStateException: no zone", lines.get(1));
        assertTrue(lines.stream().allMatch(line -> line.startsWith("<3>")));
    }

    @Test
    void peopleGetTheTime() {
        assertEquals(
                "07:05:09 WARN  dim" + System.lineSeparator(),
                LogLine.human(entry(Level.WARN, "dim"), LocalTime.of(7, 5, 9)));
    }

    /** JOURNAL_STREAM of systemd.exec(5): device and inode, decimal. */
    @Test
    void knowsTheJournalByItsStream(@TempDir Path folder) throws IOException {
        Path file = Files.createFile(folder.resolve("stream"));
        Path other = Files.createFile(folder.resolve("other"));
        String stream = Files.getAttribute(file, "unix:dev") + ":" + Files.getAttribute(file, "unix:ino");
        assertTrue(Journal.isAt(stream, file));
        assertFalse(Journal.isAt(stream, other));
        assertFalse(Journal.isAt("", file));
        assertFalse(Journal.isAt("9:x", folder.resolve("none")));
    }

    @Test
    void loggersReachTheTargetWithTheirArguments() {
        try (CapturedLog log = new CapturedLog(LogLineTest.class.getName())) {
            LoggerFactory.getLogger(LogLineTest.class).warn("{} of {} mA", 3, 4);
            LoggerFactory.getLogger(LogLineTest.class).debug("not at the usual level");
            assertEquals(List.of("WARN 3 of 4 mA"), log.lines());
        }
    }

    @Test
    void librariesOfTheDemoAreHeardOnlyWhenTheyFail() {
        assertFalse(Log.takes("io.netty.channel.X", Level.WARN));
        assertTrue(Log.takes("io.netty.channel.X", Level.ERROR));
        assertTrue(Log.takes("dev.lampwright.X", Level.INFO));
    }

    @Test
    void aLevelThatIsNoneIsInformation() {
        assertEquals(Level.TRACE, Log.levelOf("trace"));
        assertEquals(Level.INFO, Log.levelOf("loud"));
    }
}
