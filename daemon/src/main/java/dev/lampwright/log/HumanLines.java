package dev.lampwright.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.LayoutBase;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** Lines as people read them: time of day, level, text. */
final class HumanLines extends LayoutBase<ILoggingEvent> {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("HH:mm:ss").withZone(ZoneId.systemDefault());

    @Override
    public String doLayout(ILoggingEvent event) {
        return String.format("%s %-5s %s%n", TIME.format(event.getInstant()), event.getLevel(), EntryText.of(event));
    }
}
