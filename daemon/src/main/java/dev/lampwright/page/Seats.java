package dev.lampwright.page;

import java.util.concurrent.Semaphore;

/** Seats for a limited number of viewers, whichever page they watch. Every seat taken must be released with {@link #rise}. */
final class Seats {
    private final int most;
    private final Semaphore free;

    /**
     * Creates the seats.
     *
     * @param most the maximum number of simultaneous viewers
     */
    Seats(int most) {
        this.most = most;
        free = new Semaphore(most);
    }

    /** The maximum number of viewers. */
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

    /** Releases a seat. */
    void rise() {
        free.release();
    }
}
