package dev.lampwright.page;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** All who watch. */
final class Viewers {
    private static final long LONGEST_WRITE_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final int most;
    private final Semaphore seats;
    private final Map<Viewer, Boolean> present = new ConcurrentHashMap<>();

    /**
     * Makes room.
     *
     * @param most how many may watch at the same time
     */
    Viewers(int most) {
        this.most = most;
        seats = new Semaphore(most);
    }

    /** The most who may watch. */
    int most() {
        return most;
    }

    /** How many watch. */
    int count() {
        return present.size();
    }

    /** Takes a seat; false if all are taken. Whoever has one gives it back with {@link #rise}. */
    boolean sit() {
        return seats.tryAcquire();
    }

    /** Whether all seats are taken. */
    boolean full() {
        return seats.availablePermits() == 0;
    }

    /** Gives a seat back. */
    void rise() {
        seats.release();
    }

    /** Someone begins to watch. */
    void add(Viewer viewer) {
        present.put(viewer, true);
    }

    /** Someone has left. */
    void remove(Viewer viewer) {
        present.remove(viewer);
    }

    /** Tells everybody. */
    void tell(Topic topic, byte[] event) {
        present.keySet().forEach(viewer -> viewer.tell(topic, event));
    }

    /** Sends away those who have taken nothing for long, and would keep a seat for nobody. */
    void dismissStuck() {
        long now = System.nanoTime();
        present.keySet().forEach(viewer -> viewer.dismissIfStuck(LONGEST_WRITE_NANOS, now));
    }

    /** Sends everybody away. */
    void dismissAll() {
        present.keySet().forEach(Viewer::dismiss);
    }
}
