package dev.lampwright.engine;

import dev.lampwright.history.HistoryClock;
import java.nio.file.Path;

/**
 * Where a daemon keeps what must outlast it.
 *
 * @param asks the file for what people ask for, if the configuration says so
 * @param history the file for what has happened
 * @param keepHistory whether that is kept if the configuration does not say
 * @param clock the clock for the history
 */
public record Keeping(Path asks, Path history, boolean keepHistory, HistoryClock clock) {}
