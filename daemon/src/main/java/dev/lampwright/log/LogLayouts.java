package dev.lampwright.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.LayoutBase;
import dev.lampwright.upkeep.RigName;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;

/** How lines of the log look, for people and for the journal. */
final class LogLayouts {
    private LogLayouts() {}

    /**
     * The message, after the name of the rig that it concerns, and below it the stack trace, if there is one, for developers. Call this on
     * the logging thread.
     */
    private static String text(ILoggingEvent event) {
        String rig = RigName.current();
        String message = rig.isEmpty() ? event.getFormattedMessage() : rig + ": " + event.getFormattedMessage();
        return event.getThrowableProxy() == null
                ? message
                : message
                        + System.lineSeparator()
                        + ThrowableProxyUtil.asString(event.getThrowableProxy()).stripTrailing();
    }

    /** Lines for people: time of day, level, text. */
    static final class ForPeople extends LayoutBase<ILoggingEvent> {
        private static final DateTimeFormatter TIME =
                DateTimeFormatter.ofPattern("HH:mm:ss").withZone(ZoneId.systemDefault());

        @Override
        public String doLayout(ILoggingEvent event) {
            return String.format("%s %-5s %s%n", TIME.format(event.getInstant()), event.getLevel(), text(event));
        }
    }

    /** Lines for the journal, by sd-daemon(3): each with its priority in front and without a time, which the journal adds itself. */
    static final class ForJournal extends LayoutBase<ILoggingEvent> {
        @Override
        public String doLayout(ILoggingEvent event) {
            String priority = "<" + priority(event.getLevel()) + ">";
            return text(event).lines().map(line -> priority + line + "\n").collect(Collectors.joining());
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
}
