package dev.lampwright.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.Layout;
import ch.qos.logback.core.encoder.LayoutWrappingEncoder;
import ch.qos.logback.core.joran.spi.ConsoleTarget;
import ch.qos.logback.core.spi.ContextAwareBase;
import java.util.List;
import org.slf4j.LoggerFactory;

/** Configures Logback, which finds this through its {@code META-INF/services} entry: one appender, to standard error. */
public final class LogSetup extends ContextAwareBase implements Configurator {
    /** The system property with the minimum level: {@code TRACE DEBUG INFO WARN ERROR OFF}. */
    public static final String LEVEL_PROPERTY = "lampwright.log.level";

    /** Libraries of the demo that warn about things that are harmless there. */
    private static final List<String> HUSHED = List.of("io.netty", "io.moquette");

    /** Created by Logback. */
    public LogSetup() {}

    @Override
    public ExecutionStatus configure(LoggerContext context) {
        Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        root.setLevel(Level.toLevel(System.getProperty(LEVEL_PROPERTY), Level.INFO));
        root.addAppender(appender(context));
        HUSHED.forEach(name -> context.getLogger(name).setLevel(Level.ERROR));
        return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
    }

    private static ConsoleAppender<ILoggingEvent> appender(LoggerContext context) {
        Layout<ILoggingEvent> layout =
                JournalStream.takesStandardError() ? new LogLayouts.ForJournal() : new LogLayouts.ForPeople();
        layout.setContext(context);
        layout.start();
        LayoutWrappingEncoder<ILoggingEvent> encoder = new LayoutWrappingEncoder<>();
        encoder.setContext(context);
        encoder.setLayout(layout);
        encoder.setCharset(StreamCharset.current());
        encoder.start();
        ConsoleAppender<ILoggingEvent> appender = new ConsoleAppender<>();
        appender.setContext(context);
        appender.setTarget(ConsoleTarget.SystemErr.getName());
        appender.setEncoder(encoder);
        appender.start();
        return appender;
    }

    /** Logs only troubles from now on, unless {@value #LEVEL_PROPERTY} says otherwise. */
    public static void onlyTroubles() {
        atLeast(Level.WARN);
    }

    /** Logs nothing from now on, unless {@value #LEVEL_PROPERTY} says otherwise. */
    public static void nothing() {
        atLeast(Level.OFF);
    }

    private static void atLeast(Level level) {
        if (System.getProperty(LEVEL_PROPERTY) == null
                && LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME) instanceof Logger root) {
            root.setLevel(level);
        }
    }
}
