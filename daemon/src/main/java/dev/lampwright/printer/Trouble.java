package dev.lampwright.printer;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.slf4j.Logger;

/**
 * Tells the log of one thing's troubles: each reason once when it begins, and once when all is well again. A reason that comes
 * and goes is told once a minute at most. For one thread at a time.
 */
final class Trouble {
    private static final int MOST_REASONS = 16;
    private static final long QUIET_NANOS = 60_000_000_000L;

    private final Logger log;
    private final Map<String, Long> toldAt = new HashMap<>();
    private final Set<String> now = new HashSet<>();
    private boolean told;

    Trouble(Logger log) {
        this.log = log;
    }

    /**
     * There is trouble.
     *
     * @param reason which; the same reason is not told again before it ends
     * @param line what to tell the user
     * @param atNanos the monotonic time, in ns
     */
    void begins(String reason, String line, long atNanos) {
        if (now.size() < MOST_REASONS && now.add(reason) && isWorthTelling(reason, atNanos)) {
            toldAt.put(reason, atNanos);
            told = true;
            log.warn("{}", line);
        }
    }

    private boolean isWorthTelling(String reason, long atNanos) {
        Long before = toldAt.get(reason);
        return before == null ? toldAt.size() < MOST_REASONS : atNanos - before >= QUIET_NANOS;
    }

    /**
     * All is well.
     *
     * @param line what to tell the user if trouble had been told
     */
    void ends(String line) {
        now.clear();
        if (told) {
            told = false;
            log.info("{}", line);
        }
    }
}
