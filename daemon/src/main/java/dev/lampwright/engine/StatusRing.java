package dev.lampwright.engine;

import dev.lampwright.printer.PrinterStatus;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Hands statuses from the frame loop to a recorder: one thread puts, one takes, neither waits, nothing is allocated, and what does not
 * fit is counted and lost.
 */
final class StatusRing {
    private static final int SIZE = 1024;

    private final long[] ticks = new long[SIZE];
    private final PrinterStatus[] statuses = new PrinterStatus[SIZE];
    private final AtomicLong put = new AtomicLong();
    private final AtomicLong taken = new AtomicLong();
    private final AtomicLong lost = new AtomicLong();

    /**
     * Puts a status in, for the frame loop.
     *
     * @param tick the frame that first shows it
     * @param status the status
     */
    void put(long tick, PrinterStatus status) {
        long at = put.get();
        if (at - taken.get() == SIZE) {
            lost.incrementAndGet();
            return;
        }
        int index = (int) (at % SIZE);
        ticks[index] = tick;
        statuses[index] = status;
        put.set(at + 1);
    }

    /** What takes statuses out. */
    interface Taker {
        void take(long tick, PrinterStatus status);
    }

    /**
     * Takes out all that is there, for the recorder.
     *
     * @param taker told of each, in order
     */
    void drain(Taker taker) {
        long end = put.get();
        for (long at = taken.get(); at < end; at++) {
            int index = (int) (at % SIZE);
            taker.take(ticks[index], statuses[index]);
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
