package dev.lampwright.link;

import dev.lampwright.testing.CapturedLog;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Keeps what a class logs, at level info and above. */
final class LogCapture implements AutoCloseable {
    private final Logger logger;
    private final CapturedLog captured;

    LogCapture(Class<?> of) {
        logger = LoggerFactory.getLogger(of);
        captured = new CapturedLog(of.getName());
    }

    Logger logger() {
        return logger;
    }

    /** The lines so far, each with its level. */
    List<String> lines() {
        return captured.lines();
    }

    /** The lines that report trouble. */
    List<String> troubles() {
        return lines().stream().filter(line -> !line.startsWith("INFO")).toList();
    }

    @Override
    public void close() {
        captured.close();
    }
}
