package dev.lampwright.printer;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.LoggerFactory;

/** What this package logs while this is open. */
final class LogLines implements AutoCloseable {
    private final Logger logger = (Logger) LoggerFactory.getLogger("dev.lampwright.printer");
    private final List<String> lines = new CopyOnWriteArrayList<>();
    private final AppenderBase<ILoggingEvent> appender = new AppenderBase<>() {
        @Override
        protected void append(ILoggingEvent event) {
            lines.add(event.getLevel() + " " + event.getFormattedMessage());
        }
    };

    LogLines() {
        appender.setContext(logger.getLoggerContext());
        appender.start();
        logger.addAppender(appender);
    }

    /** The lines with this in them, at info and above. */
    List<String> with(String text) {
        return lines.stream()
                .filter(line -> !line.startsWith("DEBUG") && line.contains(text))
                .toList();
    }

    @Override
    public void close() {
        logger.detachAppender(appender);
    }
}
