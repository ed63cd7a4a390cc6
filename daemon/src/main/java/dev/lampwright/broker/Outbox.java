package dev.lampwright.broker;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Messages waiting to be published, oldest first. Of the retained ones, only the newest of each topic is kept, also for the next
 * connection, because the broker may have forgotten it or replaced it with a will. No more than {@link #MOST} wait or are kept; the oldest
 * are dropped. Safe for many threads.
 */
final class Outbox {
    /** The maximum number of waiting messages, and of topics whose newest retained message is kept. */
    static final int MOST = 64;

    private final Map<Object, Outgoing> waiting = new LinkedHashMap<>();
    private final Map<Object, Outgoing> kept = new LinkedHashMap<>();
    private final Semaphore bell = new Semaphore(0);
    private boolean isShut;

    /**
     * Adds a message, unless this is closed.
     *
     * @param message what to publish
     */
    synchronized void put(Outgoing message) {
        if (isShut) {
            return;
        }
        if (message.isRetained()) {
            add(kept, message.topic(), message);
            add(waiting, message.topic(), message);
        } else {
            add(waiting, message, message);
        }
        ring();
    }

    private static void add(Map<Object, Outgoing> messages, Object key, Outgoing message) {
        messages.put(key, message);
        if (messages.size() > MOST) {
            messages.remove(messages.keySet().iterator().next());
        }
    }

    /** Accepts nothing more. Waiting messages can still be taken. */
    synchronized void shut() {
        isShut = true;
    }

    /** Queues every kept message again, as needed for a new connection. */
    synchronized void again() {
        kept.forEach(waiting::putIfAbsent);
        ring();
    }

    /**
     * Takes the oldest waiting message.
     *
     * @return empty if none is waiting
     */
    synchronized Optional<Outgoing> poll() {
        Optional<Outgoing> oldest = waiting.values().stream().findFirst();
        oldest.ifPresent(message -> waiting.values().remove(message));
        return oldest;
    }

    /** Ends the waiting of {@link #awaitRing}, or of the next call if nobody is waiting. A new message does the same. */
    void ring() {
        bell.release();
    }

    /**
     * Waits for a call of {@link #ring}.
     *
     * @param most how long to wait
     * @throws InterruptedException if this thread must end
     */
    void awaitRing(Duration most) throws InterruptedException {
        if (bell.tryAcquire(most.toNanos(), TimeUnit.NANOSECONDS)) {
            bell.drainPermits();
        }
    }
}
