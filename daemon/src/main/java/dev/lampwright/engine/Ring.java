package dev.lampwright.engine;

import java.util.concurrent.atomic.AtomicLong;

/**
 * Passes what the frame loop reports to a recorder: one thread puts, one takes, neither waits, nothing is allocated, and what does not fit
 * is counted and dropped.
 */
final class Ring {
    /** How much fits. */
    static final int SIZE = 1024;

    private final long[] ticks = new long[SIZE];
    private final Object[] things = new Object[SIZE];
    private final AtomicLong put = new AtomicLong();
    private final AtomicLong taken = new AtomicLong();
    private final AtomicLong lost = new AtomicLong();

    /**
     * Adds an entry, for the frame loop.
     *
     * @param tick a frame
     * @param thing what it shows first
     */
    void put(long tick, Object thing) {
        long at = put.get();
        if (at - taken.get() == SIZE) {
            lost.incrementAndGet();
            return;
        }
        int index = (int) (at % SIZE);
        ticks[index] = tick;
        things[index] = thing;
        put.set(at + 1);
    }

    /** Receives the entries. */
    interface Taker {
        void take(long tick, Object thing);
    }

    /**
     * Removes all entries, for the recorder.
     *
     * @param taker receives each, in order
     */
    void drain(Taker taker) {
        long end = put.get();
        for (long at = taken.get(); at < end; at++) {
            int index = (int) (at % SIZE);
            taker.take(ticks[index], things[index]);
            things[index] = null;
            taken.set(at + 1);
        }
    }

    /**
     * How many did not fit.
     *
     * @return since the start
     */
    long lost() {
        return lost.get();
    }
}
