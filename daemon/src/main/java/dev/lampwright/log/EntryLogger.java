package dev.lampwright.log;

import java.util.Optional;
import org.slf4j.Marker;
import org.slf4j.event.Level;
import org.slf4j.helpers.LegacyAbstractLogger;
import org.slf4j.helpers.MessageFormatter;

/** A logger that hands what it takes to the log's target. */
final class EntryLogger extends LegacyAbstractLogger {
    private static final long serialVersionUID = 1L;

    /**
     * Makes a logger.
     *
     * @param name its name
     */
    EntryLogger(String name) {
        this.name = name;
    }

    @Override
    public boolean isTraceEnabled() {
        return Log.takes(name, Level.TRACE);
    }

    @Override
    public boolean isDebugEnabled() {
        return Log.takes(name, Level.DEBUG);
    }

    @Override
    public boolean isInfoEnabled() {
        return Log.takes(name, Level.INFO);
    }

    @Override
    public boolean isWarnEnabled() {
        return Log.takes(name, Level.WARN);
    }

    @Override
    public boolean isErrorEnabled() {
        return Log.takes(name, Level.ERROR);
    }

    @Override
    protected String getFullyQualifiedCallerName() {
        return EntryLogger.class.getName();
    }

    @Override
    protected void handleNormalizedLoggingCall(
            Level level, Marker marker, String pattern, Object[] arguments, Throwable thrown) {
        String message = MessageFormatter.basicArrayFormat(pattern, arguments);
        Log.target().take(new LogEntry(name, level, String.valueOf(message), Optional.ofNullable(thrown)));
    }
}
