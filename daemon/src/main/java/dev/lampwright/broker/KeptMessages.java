package dev.lampwright.broker;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * Distinguishes retained messages, which every new subscriber receives, from news. The last message heard on a topic is not a sign of life,
 * however often the broker repeats it. An earlier one is news: a printer may return to it while nobody listens, and its newest message
 * counts. The newest {@link #MOST} topics are remembered. For one thread at a time.
 */
public final class KeptMessages {
    /** The maximum number of topics remembered. */
    static final int MOST = 1024;

    private static final long NONE = -1;

    private final Map<String, Long> heard = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
            return size() > MOST;
        }
    };

    /**
     * Whether a message repeats what was last heard on its topic.
     *
     * @param topic the topic
     * @param payload the retained message
     * @return true if its last message was the same
     */
    public boolean isHeard(String topic, byte[] payload) {
        return heard.getOrDefault(topic, NONE) == mark(payload);
    }

    /**
     * Remembers a message.
     *
     * @param topic the topic
     * @param payload its content
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
