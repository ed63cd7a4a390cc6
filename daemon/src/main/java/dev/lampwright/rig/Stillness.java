package dev.lampwright.rig;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;

/**
 * Whether something goes on that counts in several ways at once, and when to build it anew: as soon as one of the counts has stood still for ten
 * seconds, and where that does not help, again after twice the time. A process that was stopped itself takes nobody else for still. For one
 * thread.
 */
final class Stillness {
    private static final long LONGEST_LOOK_NANOS = TimeUnit.SECONDS.toNanos(1);
    /** Half a minute would have the service manager end the process: WatchdogSec in the package's service. */
    static final long STILL_NANOS = TimeUnit.SECONDS.toNanos(10);

    private static final long LONGEST_NANOS = TimeUnit.MINUTES.toNanos(10);
    /** So long must it have gone on before it counts as mended. */
    private static final long MENDED_NANOS = TimeUnit.MINUTES.toNanos(1);

    private final long[] counts;
    private final long[] stillNanos;
    private long patienceNanos = STILL_NANOS;
    private long goesOnNanos;
    private long lookedAt;

    /** What is to be done. */
    enum Verdict {
        /** It goes on. */
        GOES_ON,
        /** It stands still. */
        STILL,
        /** It stands still, and it is time to build it anew. */
        BUILD_ANEW
    }

    Stillness(long now, int counts) {
        this.counts = new long[counts];
        stillNanos = new long[counts];
        lookedAt = now;
    }

    /**
     * Looks at the counts.
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
            goesOn(passed);
            return Verdict.GOES_ON;
        }
        goesOnNanos = 0;
        if (longest < patienceNanos) {
            return Verdict.STILL;
        }
        patienceNanos = Math.min(2 * patienceNanos, LONGEST_NANOS);
        return Verdict.BUILD_ANEW;
    }

    private void goesOn(long passed) {
        goesOnNanos += passed;
        if (goesOnNanos >= MENDED_NANOS) {
            patienceNanos = STILL_NANOS;
        }
    }

    /** Begins anew with what has been built. */
    void built() {
        Arrays.fill(stillNanos, 0);
    }
}
