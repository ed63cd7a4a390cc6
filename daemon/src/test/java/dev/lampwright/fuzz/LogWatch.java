package dev.lampwright.fuzz;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.slf4j.LoggerFactory;

/**
 * Listens to everything that is logged, including by libraries, and reports stack traces, internal errors, multi-line messages, warnings
 * that say neither where nor what to do, and excessive logging.
 */
final class LogWatch implements AutoCloseable {
    /** A warning is a line, not an essay. No source; the longest so far have about 300 characters. */
    private static final int LONGEST = 1500;
    /** Each problem is logged once a minute at most, and there are fewer different ones than this. No source. */
    private static final int MOST_WARNINGS = 80;

    private static final int KEPT = 12;
    private static final Pattern INTERNAL = Pattern.compile(
            "internal error|please report|\\tat |NullPointer|OutOfBounds|ClassCast"
                    + "|IllegalState|StackOverflow|OutOfMemory|NoSuchElement|ConcurrentModification|NegativeArraySize|Arithmetic");
    /** Words with which a warning names what to do, or what lampwright does itself; the printer's own messages are exempt. */
    private static final Pattern REMEDY = Pattern.compile("; "
            + "|: (check|make|change|raise|plug|name|join|give|use|take|set|put|look|start|free|connect|let|wait|flash|lower|remove|choose) "
            + "|^the printer reports a fault|^printer: | until lampwright is restarted");

    private final Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    private final List<String> faults = new ArrayList<>();
    private final List<String> last = new ArrayList<>();
    private int warnings;
    private final AppenderBase<ILoggingEvent> appender = new AppenderBase<>() {
        @Override
        protected void append(ILoggingEvent event) {
            hear(event);
        }
    };

    LogWatch() {
        appender.start();
        root.addAppender(appender);
    }

    private synchronized void hear(ILoggingEvent event) {
        String line = event.getFormattedMessage();
        boolean warning = event.getLevel().isGreaterOrEqual(Level.WARN);
        warnings += warning ? 1 : 0;
        last.add(event.getLevel() + " " + line);
        if (last.size() > KEPT) {
            last.remove(0);
        }
        if (event.getLevel().isGreaterOrEqual(Level.INFO)) {
            if (event.getThrowableProxy() != null) {
                faults.add("a stack trace is in the log: " + line + ": "
                        + event.getThrowableProxy().getClassName() + " "
                        + event.getThrowableProxy().getMessage());
            }
            judge(line, warning).ifPresent(fault -> faults.add(fault + ": " + Oddities.shown(line)));
        }
    }

    /**
     * What is wrong with a line, if anything.
     *
     * @param line what was logged
     * @param warning whether it is a warning
     */
    static Optional<String> judge(String line, boolean warning) {
        if (INTERNAL.matcher(line).find()) {
            return Optional.of("the log tells of an internal error");
        }
        if (line.codePoints().anyMatch(LogWatch::leavesTheLine)) {
            return Optional.of("a line of the log has control characters");
        }
        if (line.length() > LONGEST) {
            return Optional.of("a line of the log has " + line.length() + " characters");
        }
        return warning && !REMEDY.matcher(line).find()
                ? Optional.of("a warning does not say what to do")
                : Optional.empty();
    }

    private static boolean leavesTheLine(int character) {
        int type = Character.getType(character);
        return type == Character.CONTROL || type == Character.LINE_SEPARATOR || type == Character.PARAGRAPH_SEPARATOR;
    }

    /** What was wrong since the last call. */
    synchronized List<String> faults() {
        List<String> all = new ArrayList<>(faults);
        if (warnings > MOST_WARNINGS) {
            all.add(warnings + " warnings in one attack, the last: " + last);
        }
        faults.clear();
        warnings = 0;
        return all;
    }

    /** The last lines, for the report of another problem. */
    synchronized List<String> last() {
        return List.copyOf(last);
    }

    @Override
    public void close() {
        root.detachAppender(appender);
    }
}
