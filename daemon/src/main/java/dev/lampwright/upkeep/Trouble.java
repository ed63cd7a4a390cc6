package dev.lampwright.upkeep;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;

/**
 * Logs the problems of one thing: each reason once when it begins, and once when everything works again. A reason that comes and goes is
 * logged once a minute at most, as is its end. Written by one thread at a time; any thread may ask whether something is wrong.
 */
public final class Trouble {
    /** The key that identifies both lines of one problem, its beginning and its end; its value is a number. */
    public static final String KEY = "trouble";

    private static final AtomicInteger COUNT = new AtomicInteger();

    private static final int MOST_REASONS = 16;
    private static final long QUIET_NANOS = 60_000_000_000L;

    private final Logger log;
    private final int number = COUNT.incrementAndGet();
    private final Map<String, Long> loggedAt = new LinkedHashMap<>();
    private final Set<String> loggedNow = new HashSet<>();
    private volatile String words = "";

    /**
     * Starts without a problem.
     *
     * @param log receives problems as warnings, and their end as information
     */
    public Trouble(Logger log) {
        this.log = log;
    }

    /**
     * Reports a problem that its line identifies.
     *
     * @param line the line for the user; not empty
     * @param atNanos the monotonic time, in ns
     */
    public void begins(String line, long atNanos) {
        begins(line, line, atNanos);
    }

    /**
     * Reports a problem. Call this repeatedly for as long as it lasts, so that one that recurred too soon after its end is logged later.
     *
     * @param reason its reason; the same reason is not logged again before it ends
     * @param line the line for the user; not empty
     * @param atNanos the monotonic time, in ns
     */
    public void begins(String reason, String line, long atNanos) {
        words = line;
        if (loggedNow.size() < MOST_REASONS && !loggedNow.contains(reason) && isWorthLogging(reason, atNanos)) {
            loggedNow.add(reason);
            remember(reason, atNanos);
            log.atWarn().addKeyValue(KEY, number).log("{}", line);
        }
    }

    private boolean isWorthLogging(String reason, long atNanos) {
        Long before = loggedAt.get(reason);
        return before == null || atNanos - before >= QUIET_NANOS;
    }

    private void remember(String reason, long atNanos) {
        loggedAt.remove(reason);
        loggedAt.put(reason, atNanos);
        if (loggedAt.size() > MOST_REASONS) {
            loggedAt.remove(loggedAt.keySet().iterator().next());
        }
    }

    /**
     * Reports that everything works.
     *
     * @param line the line for the user if a problem had been logged
     * @return whether it was logged
     */
    public boolean ends(String line) {
        words = "";
        if (loggedNow.isEmpty()) {
            return false;
        }
        loggedNow.clear();
        log.atInfo().addKeyValue(KEY, number).log("{}", line);
        return true;
    }

    /**
     * Whether there is a problem, logged or not.
     *
     * @return true from each beginning to the end
     */
    public boolean isOn() {
        return !words.isEmpty();
    }

    /**
     * What is wrong.
     *
     * @return the line of the newest problem; empty if there is none
     */
    public String words() {
        return words;
    }
}
