package dev.lampwright.broker;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Messages that wait to be published, oldest first. Of the retained ones only the newest of each topic is kept, and it is kept for the
 * next connection too, for which the broker may have forgotten it or put a will in its place. No more than {@link #MOST} wait or
 * are kept; the oldest go. For any threads.
 */
final class Outbox {
    /** The most messages that wait, and the most topics whose newest retained message is kept. */
    static final int MOST = 64;

    private final Map<Object, Outgoing> waiting = new LinkedHashMap<>();
    private final Map<Object, Outgoing> kept = new LinkedHashMap<>();
    private final Semaphore bell = new Semaphore(0);
    private boolean isShut;

    /**
     * Adds a message, unless this is shut.
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

    /** Takes nothing more. What waits can still be had. */
    synchronized void shut() {
        isShut = true;
    }

    /** Has every message that is kept wait once more, as a new connection asks for. */
    synchronized void again() {
        kept.forEach(waiting::putIfAbsent);
        ring();
    }

    /**
     * Takes the oldest that waits.
     *
     * @return empty if none does
     */
    synchronized Optional<Outgoing> poll() {
        Optional<Outgoing> oldest = waiting.values().stream().findFirst();
        oldest.ifPresent(message -> waiting.values().remove(message));
        return oldest;
    }

    /** Ends the waiting of {@link #awaitRing}, or the next one if nobody waits. A new message does the same. */
    void ring() {
        bell.release();
    }

    /**
     * Waits until somebody rings.
     *
     * @param most how long to wait
     * @throws InterruptedException if this thread is to end
     */
    void awaitRing(Duration most) throws InterruptedException {
        if (bell.tryAcquire(most.toNanos(), TimeUnit.NANOSECONDS)) {
            bell.drainPermits();
        }
    }
}
