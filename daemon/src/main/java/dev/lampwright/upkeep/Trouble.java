package dev.lampwright.upkeep;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.slf4j.Logger;

/**
 * Tells the log of one thing's troubles: each reason once when it begins, and once when all is well again. A reason that comes
 * and goes is told once a minute at most. For one thread at a time.
 */
public final class Trouble {
    private static final int MOST_REASONS = 16;
    private static final long QUIET_NANOS = 60_000_000_000L;

    private final Logger log;
    private final Map<String, Long> toldAt = new LinkedHashMap<>();
    private final Set<String> toldNow = new HashSet<>();

    public Trouble(Logger log) {
        this.log = log;
    }

    /**
     * There is trouble. To be called again for as long as it lasts, so that one that came too soon after its end is told later.
     *
     * @param reason which; the same reason is not told again before it ends
     * @param line what to tell the user
     * @param atNanos the monotonic time, in ns
     */
    public void begins(String reason, String line, long atNanos) {
        if (toldNow.size() < MOST_REASONS && !toldNow.contains(reason) && isWorthTelling(reason, atNanos)) {
            toldNow.add(reason);
            remember(reason, atNanos);
            log.warn("{}", line);
        }
    }

    private boolean isWorthTelling(String reason, long atNanos) {
        Long before = toldAt.get(reason);
        return before == null || atNanos - before >= QUIET_NANOS;
    }

    private void remember(String reason, long atNanos) {
        toldAt.remove(reason);
        toldAt.put(reason, atNanos);
        if (toldAt.size() > MOST_REASONS) {
            toldAt.remove(toldAt.keySet().iterator().next());
        }
    }

    /**
     * All is well.
     *
     * @param line what to tell the user if trouble had been told
     * @return whether it was told
     */
    public boolean ends(String line) {
        boolean telling = !toldNow.isEmpty();
        toldNow.clear();
        if (telling) {
            log.info("{}", line);
        }
        return telling;
    }
}
