package dev.lampwright.testing;

import dev.lampwright.log.Log;
import dev.lampwright.log.LogEntry;
import dev.lampwright.log.LogTarget;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** What loggers of a name, or of names that begin with it, log while this is open. It still goes where it went before as well. */
public final class CapturedLog implements AutoCloseable {
    private final String name;
    private final List<LogEntry> entries = new CopyOnWriteArrayList<>();
    private final LogTarget before;

    /**
     * Begins to listen.
     *
     * @param name of a class or of a package
     */
    public CapturedLog(String name) {
        this.name = name;
        before = Log.to(this::take);
    }

    private void take(LogEntry entry) {
        if (entry.logger().startsWith(name)) {
            entries.add(entry);
        }
        before.take(entry);
    }

    /** What has been logged so far, each with its level in front. */
    public List<String> lines() {
        return entries.stream()
                .map(entry -> entry.level() + " " + entry.message())
                .toList();
    }

    /** Listens no longer. */
    @Override
    public void close() {
        Log.to(before);
    }
}
