package dev.lampwright.log;

import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.slf4j.event.Level;

/** What is logged, and where to. Until told otherwise: from information upwards, to the standard error, with the time. */
public final class Log {
    /** The system property with the least level: {@code TRACE DEBUG INFO WARN ERROR}. */
    public static final String LEVEL_PROPERTY = "lampwright.log.level";

    /** Libraries that complain of what is no trouble here, and what is the least that is heard of them. */
    private static final Map<String, Level> HUSHED = Map.of("io.netty.", Level.ERROR, "io.moquette.", Level.ERROR);

    private static final AtomicReference<LogTarget> TARGET = new AtomicReference<>(LogLine::human);
    private static volatile Level least = levelOf(System.getProperty(LEVEL_PROPERTY, ""));

    private Log() {}

    /**
     * Sends what is logged from now on somewhere else.
     *
     * @param target takes it
     * @return what took it until now
     */
    public static LogTarget to(LogTarget target) {
        return TARGET.getAndSet(target);
    }

    /** Sends what is logged from now on to the standard error as the journal wants it. */
    public static void toJournal() {
        TARGET.set(LogLine::journal);
    }

    /** Logs only troubles from now on, unless {@value #LEVEL_PROPERTY} says otherwise. */
    public static void onlyTroubles() {
        if (System.getProperty(LEVEL_PROPERTY) == null) {
            least = Level.WARN;
        }
    }

    /** Logs nothing from now on, unless {@value #LEVEL_PROPERTY} says otherwise. */
    public static void nothing() {
        if (System.getProperty(LEVEL_PROPERTY) == null) {
            TARGET.set(entry -> {});
        }
    }

    static LogTarget target() {
        return TARGET.get();
    }

    /**
     * Whether something is logged at all.
     *
     * @param logger its name
     * @param level how much it matters
     * @return true if it reaches the target
     */
    static boolean takes(String logger, Level level) {
        return level.toInt() >= least.toInt()
                && level.toInt() >= leastOf(logger).toInt();
    }

    private static Level leastOf(String logger) {
        for (Map.Entry<String, Level> hushed : HUSHED.entrySet()) {
            if (logger.startsWith(hushed.getKey())) {
                return hushed.getValue();
            }
        }
        return Level.TRACE;
    }

    /** The level of a name; what is none counts as information. */
    static Level levelOf(String name) {
        for (Level level : Level.values()) {
            if (level.name().equals(name.toUpperCase(Locale.ROOT))) {
                return level;
            }
        }
        return Level.INFO;
    }
}
