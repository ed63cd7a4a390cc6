package dev.lampwright.guard;

import java.util.Arrays;

/**
 * How one measure of many regions rises and falls, and when its last transitions were. Counts like {@link Swings}, from the first frame on.
 * Uses primitive arrays, because every region is evaluated in every frame.
 */
final class Traces {
    private static final int STARTED = 1;
    private static final int UP = 2;
    private static final int DOWN = 4;
    private static final int MARKED = 8;
    private static final int MARKED_BEFORE = 16;
    private static final int COUNTED = 32;

    private final long step;
    private final int depth;
    private final boolean alwaysMarked;
    private final Swings swings;
    /**
     * Values from here to {@link #high} change nothing. While values fall, the lowest of them; while they rise, a step below the highest.
     */
    private final long[] low;
    /** While values rise, the highest of them; while they fall, a step above the lowest. Before the first transition, the highest so far. */
    private final long[] high;

    private final byte[] flags;
    private final long[] transitions;
    private final byte[] newest;
    /** How many transitions of a region are remembered: if a strip never flickers, the memory for the others is never touched. */
    private final byte[] remembered;

    /** Regions that were skipped in the search for a move, although their value changes something. */
    private final int[] passed;

    private int passedCount;
    private boolean passedAll;

    /**
     * Creates traces that have seen nothing.
     *
     * @param regions how many regions
     * @param step the smallest change that is a transition, 1 or more
     * @param depth how many transitions of each region are remembered: 2, 4, 8, 16, 32 or 64
     */
    Traces(int regions, long step, int depth) {
        this(regions, step, depth, false);
    }

    private Traces(int regions, long step, int depth, boolean alwaysMarked) {
        this.alwaysMarked = alwaysMarked;
        this.step = step;
        this.depth = depth;
        swings = new Swings(step);
        low = new long[regions];
        high = new long[regions];
        flags = new byte[regions];
        transitions = new long[regions * depth];
        newest = new byte[regions];
        remembered = new byte[regions];
        passed = new int[regions];
        Arrays.fill(low, Long.MAX_VALUE);
        Arrays.fill(high, Long.MIN_VALUE);
    }

    /** The same for values that are all marked. */
    static Traces marked(int regions, long step, int depth) {
        return new Traces(regions, step, depth, true);
    }

    /** A counter of the same transitions, for one region at a time. */
    Swings swings() {
        return swings;
    }

    /** Forgets everything about a region. */
    void restart(int region) {
        flags[region] = 0;
        low[region] = Long.MAX_VALUE;
        high[region] = Long.MIN_VALUE;
        remembered[region] = 0;
    }

    /**
     * Whether a value would be more than a continuation of the previous values.
     *
     * @param region which region
     * @param value its value
     * @param mark whether the value is marked
     * @return false if {@link #keep} would certainly not count a transition
     */
    boolean wouldMove(int region, long value, boolean mark) {
        int is = flags[region];
        if (mark && (is & MARKED) == 0 && is != 0) {
            return true;
        }
        if ((is & UP) != 0) {
            return value < low[region];
        }
        if ((is & DOWN) != 0) {
            return value > high[region];
        }
        return is != 0 && (high[region] - value >= step || value - low[region] >= step);
    }

    /** Whether {@link #keep} would change nothing. */
    private boolean changesNothing(int region, long value, boolean mark) {
        return value >= low[region] && value <= high[region] && (!mark || (flags[region] & MARKED) != 0);
    }

    /**
     * Adds the next value.
     *
     * @param region which region
     * @param value its value
     * @param mark whether the value is marked
     * @param when its number or its time, never falling
     */
    void keep(int region, long value, boolean mark, long when) {
        int is = follow(region, value, flags[region]);
        is |= mark ? MARKED : 0;
        if ((is & (UP | DOWN)) != 0 && (is & COUNTED) == 0 && (is & (MARKED | MARKED_BEFORE)) != 0) {
            is |= COUNTED;
            note(region, when);
        }
        flags[region] = (byte) is;
    }

    /** Starts a search for moves through all regions. */
    void beginSearch() {
        passedCount = 0;
        passedAll = true;
    }

    /**
     * The first region that {@link #wouldMove}.
     *
     * @param from where to start
     * @param to where to end
     * @param values the value of each region
     * @param marks whether each is marked
     * @return the end if none before it does
     */
    int firstMove(int from, int to, long[] values, boolean[] marks) {
        long[] lowest = low;
        long[] highest = high;
        for (int region = from; region < to; region++) {
            long value = values[region];
            boolean within = value >= lowest[region] && value <= highest[region];
            if (!within || isNewMark(region, marks)) {
                if (wouldMove(region, value, marks[region])) {
                    return region;
                }
                pass(region);
            }
        }
        return to;
    }

    /** Records that a region is skipped in a search, whatever its value. */
    void pass(int region) {
        if (passedCount < passed.length) {
            passed[passedCount++] = region;
        } else {
            passedAll = false;
        }
    }

    /** Adds the next value of each region, see {@link #keep}. */
    void keepAll(long[] values, boolean[] marks, long when) {
        for (int region = 0; region < values.length; region++) {
            if (!changesNothing(region, values[region], marks[region])) {
                keep(region, values[region], marks[region], when);
            }
        }
    }

    /** The same after a search through all regions with the same values. */
    void keepSearched(long[] values, boolean[] marks, long when) {
        if (!passedAll) {
            keepAll(values, marks, when);
            return;
        }
        for (int i = 0; i < passedCount; i++) {
            int region = passed[i];
            keep(region, values[region], marks[region], when);
        }
    }

    /** Earlier values were marked wherever all values are. */
    private boolean isNewMark(int region, boolean[] marks) {
        return !alwaysMarked && marks[region] && (flags[region] & MARKED) == 0;
    }

    private int follow(int region, long value, int is) {
        if (value < low[region]) {
            return fall(region, value, is);
        }
        return value > high[region] ? rise(region, value, is) : is;
    }

    private int fall(int region, long value, int is) {
        if (is == 0) {
            return begin(region, value);
        }
        boolean turns = (is & UP) != 0 || ((is & DOWN) == 0 && high[region] - value >= step);
        low[region] = value;
        if (turns || (is & DOWN) != 0) {
            high[region] = value + step - 1;
        }
        return turns ? turn(is, DOWN) : is;
    }

    private int rise(int region, long value, int is) {
        boolean turns = (is & DOWN) != 0 || ((is & UP) == 0 && value - low[region] >= step);
        high[region] = value;
        if (turns || (is & UP) != 0) {
            low[region] = value - step + 1;
        }
        return turns ? turn(is, UP) : is;
    }

    private int begin(int region, long value) {
        low[region] = value;
        high[region] = value;
        return STARTED;
    }

    /**
     * How many transitions were later than a number or a time.
     *
     * @param region which region
     * @param when that number or time
     * @return 0 to the depth; the depth if there are more
     */
    int transitionsAfter(int region, long when) {
        int first = region * depth;
        int count = 0;
        while (count < remembered[region] && transitions[first + ((newest[region] - count) & (depth - 1))] > when) {
            count++;
        }
        return count;
    }

    private void note(int region, long when) {
        newest[region] = (byte) ((newest[region] + 1) & (depth - 1));
        transitions[region * depth + newest[region]] = when;
        if (remembered[region] < depth) {
            remembered[region]++;
        }
    }

    private static int turn(int is, int direction) {
        int before = (is & MARKED) == 0 ? 0 : MARKED_BEFORE;
        return STARTED | direction | before;
    }
}
