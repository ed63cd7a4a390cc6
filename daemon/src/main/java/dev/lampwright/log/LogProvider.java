package dev.lampwright.log;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.ILoggerFactory;
import org.slf4j.IMarkerFactory;
import org.slf4j.helpers.BasicMarkerFactory;
import org.slf4j.helpers.NOPMDCAdapter;
import org.slf4j.spi.MDCAdapter;
import org.slf4j.spi.SLF4JServiceProvider;

/** What SLF4J finds by its {@code META-INF/services} entry, and makes. */
public final class LogProvider implements SLF4JServiceProvider {
    /** The newest version of the interface that this was written against. */
    private static final String SLF4J = "2.0.99";

    private final Map<String, EntryLogger> loggers = new ConcurrentHashMap<>();
    private final IMarkerFactory markers = new BasicMarkerFactory();
    private final MDCAdapter context = new NOPMDCAdapter();

    /** Made by SLF4J. */
    public LogProvider() {}

    @Override
    public ILoggerFactory getLoggerFactory() {
        return name -> loggers.computeIfAbsent(name, EntryLogger::new);
    }

    @Override
    public IMarkerFactory getMarkerFactory() {
        return markers;
    }

    @Override
    public MDCAdapter getMDCAdapter() {
        return context;
    }

    @Override
    public String getRequestedApiVersion() {
        return SLF4J;
    }

    @Override
    public void initialize() {
        // There is nothing to set up.
    }
}
