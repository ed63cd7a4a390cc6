package dev.lampwright.link;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.LoggerFactory;

/** Keeps what a class logs, from information upwards. */
final class LogCapture implements AutoCloseable {
    private final List<String> lines = new CopyOnWriteArrayList<>();
    private final Logger logger;
    private final AppenderBase<ILoggingEvent> appender = new AppenderBase<>() {
        @Override
        protected void append(ILoggingEvent event) {
            lines.add(event.getLevel() + " " + event.getFormattedMessage());
        }
    };

    LogCapture(Class<?> of) {
        logger = (Logger) LoggerFactory.getLogger(of);
        logger.setLevel(Level.INFO);
        appender.start();
        logger.addAppender(appender);
    }

    org.slf4j.Logger logger() {
        return logger;
    }

    /** The lines so far, each with its level. */
    List<String> lines() {
        return List.copyOf(lines);
    }

    @Override
    public void close() {
        logger.detachAppender(appender);
    }
}
