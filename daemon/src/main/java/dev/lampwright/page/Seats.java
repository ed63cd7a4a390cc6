package dev.lampwright.page;

import java.util.concurrent.Semaphore;

/** Room for a limited number of viewers, whichever page they watch. Whoever sits down gets up again with {@link #rise}. */
final class Seats {
    private final int most;
    private final Semaphore free;

    /**
     * Makes room.
     *
     * @param most how many may watch at the same time
     */
    Seats(int most) {
        this.most = most;
        free = new Semaphore(most);
    }

    /** The most who may watch. */
    int most() {
        return most;
    }

    /** Takes a seat; false if all are taken. */
    boolean sit() {
        return free.tryAcquire();
    }

    /** Whether all seats are taken. */
    boolean full() {
        return free.availablePermits() == 0;
    }

    /** Gives a seat back. */
    void rise() {
        free.release();
    }
}
