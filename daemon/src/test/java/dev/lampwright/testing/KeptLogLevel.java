package dev.lampwright.testing;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.util.function.IntSupplier;
import org.slf4j.LoggerFactory;

/** Protects later tests from what a command does to the log. */
public final class KeptLogLevel {
    private KeptLogLevel() {}

    /**
     * Runs a command, and then restores the log.
     *
     * @param command may silence the log
     * @return what it returns
     */
    public static int during(IntSupplier command) {
        Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        Level before = root.getLevel();
        try {
            return command.getAsInt();
        } finally {
            root.setLevel(before);
        }
    }
}
