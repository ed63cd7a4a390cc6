package dev.lampwright.page;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.UnsynchronizedAppenderBase;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.slf4j.LoggerFactory;

/** The log's last warnings and errors, as many as fit on the page. Safe for many threads. */
final class TroubleLog extends UnsynchronizedAppenderBase<ILoggingEvent> implements AutoCloseable {
    /** How many are kept. */
    static final int MOST = 12;

    private static final int LONGEST = 400;

    private final Deque<Entry> entries = new ArrayDeque<>();
    private long count;

    /**
     * One line of the log.
     *
     * @param at when
     * @param level {@code warn} or {@code error}
     * @param text what it says, cut if it is long
     */
    record Entry(Instant at, String level, String text) {}

    /** Listens to the whole log from now on. */
    static TroubleLog listening() {
        TroubleLog log = new TroubleLog();
        Logger root = root();
        log.setContext(root.getLoggerContext());
        log.start();
        root.addAppender(log);
        return log;
    }

    private static Logger root() {
        return (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    }

    @Override
    protected void append(ILoggingEvent event) {
        if (event.getLevel().isGreaterOrEqual(Level.WARN)) {
            String level = event.getLevel().isGreaterOrEqual(Level.ERROR) ? "error" : "warn";
            keep(new Entry(event.getInstant(), level, cut(event.getFormattedMessage())));
        }
    }

    private synchronized void keep(Entry entry) {
        if (entries.size() == MOST) {
            entries.removeLast();
        }
        entries.addFirst(entry);
        count++;
    }

    private static String cut(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
    }

    /** How many there have been. */
    synchronized long count() {
        return count;
    }

    /** Those that are kept, the newest first. */
    synchronized List<Entry> entries() {
        return List.copyOf(entries);
    }

    /** Listens no more. */
    @Override
    public void close() {
        root().detachAppender(this);
        stop();
    }
}
