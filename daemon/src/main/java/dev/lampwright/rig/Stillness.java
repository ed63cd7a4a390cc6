package dev.lampwright.rig;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;

/**
 * Whether something runs, judged by several counts, and when to restart it: once one of the counts has not changed for ten seconds, and if
 * that does not help, again after twice that time and so on, up to ten minutes. Time in which this whole process was stopped does not
 * count. For one thread.
 */
final class Stillness {
    private static final long LONGEST_LOOK_NANOS = TimeUnit.SECONDS.toNanos(1);
    /** Less than WatchdogSec of the package's service, 30 s, after which the service manager would end the whole process. */
    static final long STILL_NANOS = TimeUnit.SECONDS.toNanos(10);

    private static final long LONGEST_NANOS = TimeUnit.MINUTES.toNanos(10);
    /** How long it must run before it counts as recovered. */
    private static final long RECOVERED_NANOS = TimeUnit.MINUTES.toNanos(1);

    private final long[] counts;
    private final long[] stillNanos;
    private long patienceNanos = STILL_NANOS;
    private long runningNanos;
    private long lookedAt;

    /** What to do. */
    enum Verdict {
        /** Nothing: it runs. */
        RUNNING,
        /** Wait: it has stalled. */
        STILL,
        /** Restart it: it has stalled for long enough. */
        RESTART
    }

    Stillness(long now, int counts) {
        this.counts = new long[counts];
        stillNanos = new long[counts];
        lookedAt = now;
    }

    /**
     * Checks the counts.
     *
     * @param now ns of a monotonic clock
     * @param seen each count
     */
    Verdict look(long now, long... seen) {
        long passed = Math.min(now - lookedAt, LONGEST_LOOK_NANOS);
        lookedAt = now;
        long longest = 0;
        for (int i = 0; i < counts.length; i++) {
            stillNanos[i] = seen[i] == counts[i] ? stillNanos[i] + passed : 0;
            counts[i] = seen[i];
            longest = Math.max(longest, stillNanos[i]);
        }
        if (longest < STILL_NANOS) {
            runs(passed);
            return Verdict.RUNNING;
        }
        runningNanos = 0;
        if (longest < patienceNanos) {
            return Verdict.STILL;
        }
        patienceNanos = Math.min(2 * patienceNanos, LONGEST_NANOS);
        return Verdict.RESTART;
    }

    private void runs(long passed) {
        runningNanos += passed;
        if (runningNanos >= RECOVERED_NANOS) {
            patienceNanos = STILL_NANOS;
        }
    }

    /** Records that it was restarted, and gives it time. */
    void restarted() {
        Arrays.fill(stillNanos, 0);
    }
}
