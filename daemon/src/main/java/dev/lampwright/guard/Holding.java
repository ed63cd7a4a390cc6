package dev.lampwright.guard;

import java.util.Arrays;

/**
 * Which regions of one kind are held, and which are returning. A region is free, held, or returning. It is held until the wanted light has
 * kept within the limit for a second, and then returns to that light evenly over another half second, so light is right again within two
 * seconds.
 */
final class Holding {
    /** The share of the wanted light that a free region shows. */
    static final int FREE = 1 << 16;

    /** The number of transitions remembered: more than a second may have. */
    static final int DEPTH = 8;

    private static final int HALF_SECONDS = 2;

    /** Our own choice: as long as the second over which flashes are counted. */
    private static final long CALM_NANOS = 1_000_000_000L;
    /** Wanted light with this many transitions in a second, the most that the limit allows, is not calm. */
    private static final int TOO_MANY = 7;

    private final Regions regions;
    private final Flicker wanted;
    private final int step;
    private final int[] share;
    private final long[] overAt;
    private final int[] bound;
    private int count;

    /**
     * Starts with all regions free.
     *
     * @param regions the regions
     * @param framesPerSecond rate of the frames
     */
    Holding(Regions regions, int framesPerSecond) {
        this.regions = regions;
        wanted = regions.flicker(DEPTH);
        step = Math.max(1, HALF_SECONDS * FREE / framesPerSecond);
        share = new int[regions.count()];
        overAt = new long[share.length];
        bound = new int[share.length];
        Arrays.fill(share, FREE);
    }

    /** The regions. */
    Regions regions() {
        return regions;
    }

    /** How many regions are not free. */
    int count() {
        return count;
    }

    /** One of the regions that are not free, from 0 to {@link #count} − 1. */
    int region(int index) {
        return bound[index];
    }

    /** How much of the wanted light a region shows: 0 while it is held, {@link #FREE} if it is free. */
    int share(int region) {
        return share[region];
    }

    /** Holds a region, because of a frame at that time. */
    void hold(int region, long nanos) {
        if (share[region] == FREE) {
            bound[count++] = region;
            wanted.restart(region);
        }
        share[region] = 0;
        overAt[region] = nanos;
    }

    /** Holds every region. */
    void holdAll(long nanos) {
        for (int region = 0; region < share.length; region++) {
            hold(region, nanos);
        }
    }

    /**
     * Evaluates the wanted light for all regions that are not free. One whose wanted light had seven transitions in the last second stays
     * held; one that has been calm for long enough moves back by a step.
     *
     * @param nanos the time of the frame
     */
    void follow(long nanos) {
        int left = 0;
        for (int i = 0; i < count; i++) {
            int region = bound[i];
            wanted.keep(regions, region, nanos);
            if (wanted.transitionsAfter(region, nanos - CALM_NANOS) >= TOO_MANY) {
                hold(region, nanos);
            } else if (nanos - overAt[region] >= CALM_NANOS) {
                share[region] = Math.min(FREE, share[region] + step);
            }
            if (share[region] < FREE) {
                bound[left++] = region;
            }
        }
        count = left;
    }
}
