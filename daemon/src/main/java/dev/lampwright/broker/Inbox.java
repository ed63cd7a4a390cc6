package dev.lampwright.broker;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;

/**
 * Messages that have come and wait for one who reads them, oldest first. All of them are read while there is room; when there is none, a message
 * goes on whose topic a newer one waits, and the oldest if there is no such message. So whoever floods loses what is out of date, and nobody waits.
 * For any threads.
 */
final class Inbox {
    /** The most messages that wait. */
    static final int MOST = 256;

    /** The most bytes of payload that wait, unless a single message has more. */
    static final int MOST_BYTES = 1 << 20;

    private final Deque<HeardMessage> waiting = new ArrayDeque<>();
    private final Map<String, Integer> perTopic = new HashMap<>();
    private long bytes;
    private volatile long lost;
    private final Runnable onNews;
    private boolean isShut;

    /**
     * Makes an empty one.
     *
     * @param onNews called for each message that is added, by whoever adds it; must not wait
     */
    Inbox(Runnable onNews) {
        this.onNews = onNews;
    }

    /**
     * Adds a message, unless this is shut.
     *
     * @param message what has come
     */
    void put(HeardMessage message) {
        if (add(message)) {
            onNews.run();
        }
    }

    private synchronized boolean add(HeardMessage message) {
        if (isShut) {
            return false;
        }
        waiting.add(message);
        perTopic.merge(message.topic(), 1, Integer::sum);
        bytes += message.payload().length;
        int before = waiting.size();
        while (waiting.size() > MOST || (bytes > MOST_BYTES && waiting.size() > 1)) {
            noteGone(removeLeastMissed());
        }
        lost += before - waiting.size();
        return true;
    }

    private HeardMessage removeLeastMissed() {
        Iterator<HeardMessage> all = waiting.iterator();
        while (all.hasNext()) {
            HeardMessage message = all.next();
            if (perTopic.get(message.topic()) > 1) {
                all.remove();
                return message;
            }
        }
        return waiting.remove();
    }

    private void noteGone(HeardMessage message) {
        perTopic.computeIfPresent(message.topic(), (topic, count) -> count > 1 ? count - 1 : null);
        bytes -= message.payload().length;
    }

    /**
     * Takes the oldest message.
     *
     * @return empty if none waits
     */
    synchronized Optional<HeardMessage> poll() {
        Optional<HeardMessage> oldest = Optional.ofNullable(waiting.poll());
        oldest.ifPresent(this::noteGone);
        return oldest;
    }

    /** Takes and gives nothing more. */
    synchronized void shut() {
        isShut = true;
        waiting.clear();
        perTopic.clear();
    }

    /** How many messages were lost because there was no room. */
    long lost() {
        return lost;
    }
}
