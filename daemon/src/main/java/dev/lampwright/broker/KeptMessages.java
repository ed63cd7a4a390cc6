package dev.lampwright.broker;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * Tells messages that the broker has kept, and gives to every new subscriber, from news. What was heard last on the same topic is no
 * sign of life, however often the broker gives it again. What was heard there earlier is news: a printer may go back to it while nobody
 * listens, and its newest word counts. The newest {@link #MOST} topics are remembered. For one thread at a time.
 */
public final class KeptMessages {
    /** The most topics that are remembered. */
    static final int MOST = 1024;

    private static final long NONE = -1;

    private final Map<String, Long> heard = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
            return size() > MOST;
        }
    };

    /**
     * Whether a message says what was heard last on its topic.
     *
     * @param topic the topic
     * @param payload what the broker has kept
     * @return true if its last message was the same
     */
    public boolean isHeard(String topic, byte[] payload) {
        return heard.getOrDefault(topic, NONE) == mark(payload);
    }

    /**
     * Remembers a message.
     *
     * @param topic the topic
     * @param payload what it says
     */
    public void note(String topic, byte[] payload) {
        heard.put(topic, mark(payload));
    }

    private static long mark(byte[] payload) {
        CRC32 sum = new CRC32();
        sum.update(payload);
        return (long) payload.length << Integer.SIZE | sum.getValue();
    }
}
