package dev.lampwright.log;

/** Takes what is logged. */
@FunctionalInterface
public interface LogTarget {
    /**
     * Takes one entry.
     *
     * @param entry may come from any thread, several at a time
     */
    void take(LogEntry entry);
}
