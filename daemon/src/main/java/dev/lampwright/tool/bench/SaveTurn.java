package dev.lampwright.tool.bench;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Lets one thread at a time write the same files, however many benches a process has. Few may wait, and not for long, so that enough
 * threads are left for everything else.
 */
final class SaveTurn {
    /** How many wait behind the one whose turn it is. */
    static final int MOST_WAITING = 2;

    private static final long LONGEST_S = 30;

    private final ReentrantLock turn = new ReentrantLock(true);
    private final Semaphore places = new Semaphore(1 + MOST_WAITING);

    /** What is done when it is its turn. */
    interface Work<T> {
        T run() throws BenchRefusal;
    }

    /**
     * Waits for its turn, and does something.
     *
     * @param work what to do
     * @param <T> what comes of it
     * @return what came of it
     * @throws BenchRefusal if too many wait, if it takes too long, or if the work says so
     */
    <T> T take(Work<T> work) throws BenchRefusal {
        if (!places.tryAcquire()) {
            throw busy();
        }
        try {
            if (!turn.tryLock(LONGEST_S, TimeUnit.SECONDS)) {
                throw busy();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            places.release();
            throw BenchRefusal.closing();
        } catch (BenchRefusal e) {
            places.release();
            throw e;
        }
        try {
            return work.run();
        } finally {
            turn.unlock();
            places.release();
        }
    }

    private static BenchRefusal busy() {
        return new BenchRefusal(503, "busy", "the bench is busy with others; try again in a second");
    }
}
