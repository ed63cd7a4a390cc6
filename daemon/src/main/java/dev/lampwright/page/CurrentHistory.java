package dev.lampwright.page;

import java.util.List;
import java.util.stream.LongStream;

/** What the strip drew from its supply over the last minutes: the maximum of each second. One thread adds, any may read. */
final class CurrentHistory {
    /** Ten minutes. */
    static final int SECONDS = 600;

    private final int[] most = new int[SECONDS];
    private long next;

    /** Consecutive seconds. */
    record Stretch(long from, List<Integer> milliamps) {
        /** Keeps a copy of the list. */
        Stretch {
            milliamps = List.copyOf(milliamps);
        }

        /** The first second after it. */
        long end() {
            return from + milliamps.size();
        }
    }

    /**
     * Adds a second.
     *
     * @param milliamps its maximum
     */
    synchronized void add(int milliamps) {
        most[(int) (next % SECONDS)] = milliamps;
        next++;
    }

    /** How many seconds there have been. */
    synchronized long end() {
        return next;
    }

    /**
     * The newest seconds.
     *
     * @param from the first one, counted from the page's start
     * @return those from there on that are still stored
     */
    synchronized Stretch since(long from) {
        long first = Math.max(Math.max(0, next - SECONDS), Math.min(from, next));
        return new Stretch(
                first,
                LongStream.range(first, next)
                        .mapToObj(second -> most[(int) (second % SECONDS)])
                        .toList());
    }
}
