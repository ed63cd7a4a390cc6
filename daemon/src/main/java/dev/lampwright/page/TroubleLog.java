package dev.lampwright.page;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.UnsynchronizedAppenderBase;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Trouble;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.slf4j.LoggerFactory;
import org.slf4j.event.KeyValuePair;

/**
 * The log's last lines: a repeated one is listed once, with a count, and one that is over (a {@link Trouble} that has ended) is marked as
 * such. Warnings and errors are kept apart from the rest, which cannot push them out. Safe for many threads.
 */
final class TroubleLog extends UnsynchronizedAppenderBase<ILoggingEvent> implements AutoCloseable {
    /** The maximum number of warnings and errors kept, and of other lines. */
    static final int MOST = 24;

    private static final String INFO = "info";

    private static final int LONGEST = 400;
    private static final int NO_TROUBLE = 0;

    private final String rig;
    private final Deque<Entry> entries = new ArrayDeque<>();
    private long count;

    /**
     * One line of the log.
     *
     * @param at when it last came
     * @param times how often it has come
     * @param level {@code info}, {@code warn} or {@code error}
     * @param text the text, shortened if long
     * @param trouble the number of the problem that it starts; 0 if none
     * @param over when that ended, if it has
     */
    record Entry(Instant at, int times, String level, String text, int trouble, Optional<Instant> over) {
        boolean isTrouble() {
            return !level.equals(INFO);
        }

        Entry endedAt(Instant when) {
            return new Entry(at, times, level, text, trouble, Optional.of(when));
        }
    }

    private TroubleLog(String rig) {
        this.rig = rig;
    }

    /**
     * Starts listening to the log.
     *
     * @param rig the rig; what is logged for other rigs is left out; empty if there is only one
     */
    static TroubleLog listening(String rig) {
        TroubleLog log = new TroubleLog(rig);
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
        String about = RigName.current();
        if (!about.isEmpty() && !about.equals(rig)) {
            return;
        }
        int trouble = trouble(event);
        if (event.getLevel().isGreaterOrEqual(Level.WARN)) {
            String level = event.getLevel().isGreaterOrEqual(Level.ERROR) ? "error" : "warn";
            keep(new Entry(event.getInstant(), 1, level, cut(event.getFormattedMessage()), trouble, Optional.empty()));
        } else if (trouble != NO_TROUBLE) {
            end(trouble, event.getInstant());
        } else if (event.getLevel().isGreaterOrEqual(Level.INFO)) {
            keep(new Entry(event.getInstant(), 1, INFO, cut(event.getFormattedMessage()), trouble, Optional.empty()));
        }
    }

    private static int trouble(ILoggingEvent event) {
        List<KeyValuePair> pairs = event.getKeyValuePairs();
        return pairs == null
                ? NO_TROUBLE
                : pairs.stream()
                        .filter(pair -> pair.key.equals(Trouble.KEY))
                        .mapToInt(pair -> (Integer) pair.value)
                        .findFirst()
                        .orElse(NO_TROUBLE);
    }

    private synchronized void keep(Entry entry) {
        int before = entries.stream()
                .filter(other -> isSame(other, entry))
                .mapToInt(Entry::times)
                .sum();
        entries.removeIf(other -> isSame(other, entry));
        List<Entry> kind = entries.stream()
                .filter(other -> other.isTrouble() == entry.isTrouble())
                .toList();
        if (kind.size() == MOST) {
            entries.removeLastOccurrence(kind.get(MOST - 1));
        }
        entries.addFirst(
                new Entry(entry.at, before + entry.times, entry.level, entry.text, entry.trouble, Optional.empty()));
        count++;
    }

    private static boolean isSame(Entry one, Entry other) {
        return one.level.equals(other.level) && one.text.equals(other.text);
    }

    private synchronized void end(int trouble, Instant when) {
        List<Entry> all = entries.stream()
                .map(entry -> entry.trouble == trouble && entry.over.isEmpty() ? entry.endedAt(when) : entry)
                .toList();
        entries.clear();
        entries.addAll(all);
        count++;
    }

    private static String cut(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
    }

    /** A number that changes whenever the entries do. */
    synchronized long count() {
        return count;
    }

    /** The kept entries, the newest first, by when they last came. */
    synchronized List<Entry> entries() {
        return List.copyOf(entries);
    }

    /** Stops listening. */
    @Override
    public void close() {
        root().detachAppender(this);
        stop();
    }
}
