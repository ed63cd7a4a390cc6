package dev.lampwright.engine;

import dev.lampwright.history.HistoryClock;
import java.nio.file.Path;

/**
 * Where a daemon keeps what is to outlast it.
 *
 * @param asks the file for what people ask for, if the configuration has it kept
 * @param history the file for what has happened
 * @param keepHistory whether that is kept if the configuration does not say
 * @param clock what time it is for the history
 */
public record Keeping(Path asks, Path history, boolean keepHistory, HistoryClock clock) {}
