package dev.lampwright.broker;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Messages waiting to be published, oldest first. Of the retained ones, only the newest of each topic is kept, also for the next
 * connection, because the broker may have forgotten it or replaced it with a will. No more than {@link #MOST} wait or are kept; the oldest
 * are dropped. Safe for many threads.
 */
final class Outbox implements Post {
    /** The maximum number of waiting messages, and of topics whose newest retained message is kept. */
    static final int MOST = 64;

    private final Map<Object, Outgoing> waiting = new LinkedHashMap<>();
    private final Map<Object, Outgoing> kept = new LinkedHashMap<>();
    private final Bell bell = new Bell();
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
        bell.ring();
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

    @Override
    public synchronized void again() {
        kept.forEach(waiting::putIfAbsent);
        bell.ring();
    }

    /** Takes the oldest waiting message. */
    @Override
    public synchronized Optional<Outgoing> poll() {
        Optional<Outgoing> oldest = waiting.values().stream().findFirst();
        oldest.ifPresent(message -> waiting.values().remove(message));
        return oldest;
    }

    @Override
    public Bell bell() {
        return bell;
    }
}
