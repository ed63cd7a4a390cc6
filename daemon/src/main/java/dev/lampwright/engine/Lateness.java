package dev.lampwright.engine;

import java.util.concurrent.atomic.AtomicLong;

/**
 * How late something was, counted into classes that are about 3 % wide. One thread counts and allocates nothing; any thread may ask, and
 * gets the figures of a moment ago.
 */
public final class Lateness {
    private static final int STEPS_PER_OCTAVE = 32;
    private static final int OCTAVES = 32;

    private final long[] counts = new long[OCTAVES * STEPS_PER_OCTAVE];
    private final AtomicLong total = new AtomicLong();
    private final AtomicLong sum = new AtomicLong();

    /**
     * Counts one.
     *
     * @param nanos how late, in ns; less than 0 counts as 0
     */
    public void add(long nanos) {
        long late = Math.max(0, nanos);
        counts[classOf(late)]++;
        sum.addAndGet(late);
        total.incrementAndGet();
    }

    /**
     * How many have been counted.
     *
     * @return since the start
     */
    public long total() {
        return total.get();
    }

    /**
     * All lateness together.
     *
     * @return ns since the start
     */
    public long sumNanos() {
        return sum.get();
    }

    /**
     * How many were no later than a given time.
     *
     * @param nanos how late, in ns, 0 or more; its class counts if it ends there or before, so the limit may be up to 3 % lower
     * @return since the start; one that is being counted at this moment may or may not be included
     */
    public long upTo(long nanos) {
        long seen = 0;
        for (int i = 0; i < counts.length && topOf(i) <= nanos; i++) {
            seen += counts[i];
        }
        return seen;
    }

    /**
     * The lateness that a share of all stayed at or under.
     *
     * @param share 0 to 1, for example 0.999
     * @return µs, up to 3 % too high; 0 if nothing has been counted
     */
    public double microsAt(double share) {
        long wanted = (long) Math.ceil(share * total.get());
        long seen = 0;
        for (int i = 0; i < counts.length; i++) {
            seen += counts[i];
            if (seen >= wanted && seen > 0) {
                return topOf(i) / 1000.0;
            }
        }
        return 0;
    }

    private static int classOf(long nanos) {
        if (nanos < STEPS_PER_OCTAVE) {
            return (int) nanos;
        }
        int octave = 63 - Long.numberOfLeadingZeros(nanos) - 4;
        int step = (int) (nanos >> (octave - 1)) - STEPS_PER_OCTAVE;
        return Math.min((octave * STEPS_PER_OCTAVE) + step, OCTAVES * STEPS_PER_OCTAVE - 1);
    }

    private static long topOf(int index) {
        int octave = index / STEPS_PER_OCTAVE;
        long step = index % STEPS_PER_OCTAVE;
        return octave == 0 ? step : ((step + STEPS_PER_OCTAVE + 1) << (octave - 1)) - 1;
    }
}
