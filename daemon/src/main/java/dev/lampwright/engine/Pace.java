package dev.lampwright.engine;

import java.util.concurrent.TimeUnit;

/** The rate of something that is counted. For one thread. */
final class Pace {
    private static final long SHORTEST_NANOS = TimeUnit.SECONDS.toNanos(1);

    private long count;
    private long nanos;
    private boolean started;
    private double perSecond = Double.NaN;

    /**
     * Takes a count, a second or more after the one that the rate is reckoned from.
     *
     * @param newCount how many there have been
     * @param nowNanos when that was
     * @return the rate, per second; NaN if it is not known yet
     */
    double at(long newCount, long nowNanos) {
        if (!started || nowNanos - nanos >= SHORTEST_NANOS) {
            perSecond = started ? (newCount - count) * 1e9 / (nowNanos - nanos) : Double.NaN;
            started = true;
            count = newCount;
            nanos = nowNanos;
        }
        return perSecond;
    }
}
