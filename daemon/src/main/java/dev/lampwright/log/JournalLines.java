package dev.lampwright.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.LayoutBase;
import java.util.stream.Collectors;

/** Lines as the journal takes them, by sd-daemon(3): each with its priority in front and without a time, which the journal keeps itself. */
final class JournalLines extends LayoutBase<ILoggingEvent> {
    @Override
    public String doLayout(ILoggingEvent event) {
        String priority = "<" + priority(event.getLevel()) + ">";
        return EntryText.of(event).lines().map(line -> priority + line + "\n").collect(Collectors.joining());
    }

    /** Priorities of syslog(3). */
    private static int priority(Level level) {
        return switch (level.toInt()) {
            case Level.ERROR_INT -> 3;
            case Level.WARN_INT -> 4;
            case Level.INFO_INT -> 6;
            default -> 7;
        };
    }
}
