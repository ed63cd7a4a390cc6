package dev.lampwright.log;

import java.util.Optional;
import org.slf4j.event.Level;

/**
 * Something that was logged.
 *
 * @param logger name of the logger, by custom that of a class
 * @param level how much it matters
 * @param message the whole text
 * @param thrown what comes with it, for the one who mends the program
 */
public record LogEntry(String logger, Level level, String message, Optional<Throwable> thrown) {}
