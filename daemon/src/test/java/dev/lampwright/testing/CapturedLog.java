package dev.lampwright.testing;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.LoggerFactory;

/**
 * What the loggers of a class, or of all classes of a package, log at level INFO and above while this is open, even if a command has
 * silenced the log elsewhere in this process. It still goes to its previous destination as well.
 */
public final class CapturedLog implements AutoCloseable {
    private final Logger logger;
    private final Level levelBefore;
    private final List<String> lines = new CopyOnWriteArrayList<>();
    private final AppenderBase<ILoggingEvent> appender = new AppenderBase<>() {
        @Override
        protected void append(ILoggingEvent event) {
            lines.add(event.getLevel() + " " + event.getFormattedMessage());
        }
    };

    /**
     * Starts listening.
     *
     * @param name of a class or of a package
     */
    public CapturedLog(String name) {
        logger = (Logger) LoggerFactory.getLogger(name);
        levelBefore = logger.getLevel();
        if (levelBefore == null) {
            logger.setLevel(Level.INFO);
        }
        appender.start();
        logger.addAppender(appender);
    }

    /** What has been logged so far, each preceded by its level. */
    public List<String> lines() {
        return List.copyOf(lines);
    }

    /** Listens no longer. */
    @Override
    public void close() {
        logger.detachAppender(appender);
        logger.setLevel(levelBefore);
    }
}
