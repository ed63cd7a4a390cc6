package dev.lampwright.testing;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.util.function.IntSupplier;
import org.slf4j.LoggerFactory;

/** Keeps what a command does to the log from the tests after it. */
public final class KeptLogLevel {
    private KeptLogLevel() {}

    /**
     * Runs a command, after which the log is as it was before.
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
