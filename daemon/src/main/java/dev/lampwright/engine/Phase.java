package dev.lampwright.engine;

import java.util.concurrent.TimeUnit;

/**
 * Where in a tick a frame loop makes its frames, so that many loops in one process do not all wake at the same moment.
 *
 * @param share of a tick, from 0 to 1, on a grid shared by all loops of the process with the same rate; negative for no grid
 */
public record Phase(double share) {
    /** For a single loop: its grid begins when it starts. */
    public static final Phase AT_ONCE = new Phase(-1);

    /** The fractional parts of its multiples are spread evenly over 0 to 1 however many there are (three-gap theorem). */
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private static final long NANOS_PER_SECOND = TimeUnit.SECONDS.toNanos(1);

    /**
     * One of many.
     *
     * @param number which, 0 or more
     * @return where in a tick its frames are
     */
    public static Phase of(int number) {
        double turns = number * GOLDEN;
        return new Phase(turns - Math.floor(turns));
    }

    /**
     * When the first frame is due.
     *
     * @param now ns of the clock
     * @param framesPerSecond rate
     * @return ns of the clock, less than a tick from now
     */
    long start(long now, int framesPerSecond) {
        if (share < 0) {
            return now;
        }
        long tick = NANOS_PER_SECOND / framesPerSecond;
        long offset = (long) (share * tick);
        return now + Math.floorMod(offset - now, tick);
    }
}
