package dev.lampwright.log;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import org.slf4j.event.Level;

/** Entries as lines on the standard error, each entry in one go so that entries of several threads do not mix. */
final class LogLine {
    private LogLine() {}

    /** Writes an entry as people read it: time, level, text. */
    static void human(LogEntry entry) {
        System.err.print(human(entry, LocalTime.now()));
    }

    /** Writes an entry as the journal takes it. */
    static void journal(LogEntry entry) {
        System.err.print(journalLines(entry));
    }

    static String human(LogEntry entry, LocalTime time) {
        return String.format(
                "%s %-5s %s%n", DateTimeFormatter.ofPattern("HH:mm:ss").format(time), entry.level(), text(entry));
    }

    /**
     * Each line with its priority in front, by sd-daemon(3): the journal makes an entry of every line. It keeps the time itself.
     */
    static String journalLines(LogEntry entry) {
        String priority = "<" + priority(entry.level()) + ">";
        return text(entry).lines().map(line -> priority + line + "\n").collect(Collectors.joining());
    }

    /** Priorities of syslog(3). */
    private static int priority(Level level) {
        return switch (level) {
            case ERROR -> 3;
            case WARN -> 4;
            case INFO -> 6;
            case DEBUG, TRACE -> 7;
        };
    }

    private static String text(LogEntry entry) {
        return entry.thrown()
                .map(thrown -> entry.message() + System.lineSeparator() + trace(thrown))
                .orElse(entry.message());
    }

    private static String trace(Throwable thrown) {
        StringWriter trace = new StringWriter();
        thrown.printStackTrace(new PrintWriter(trace, true));
        return trace.toString().stripTrailing();
    }
}
