package dev.lampwright.printer;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * Tells messages that the broker has kept, and gives to every new subscriber, from news. What was heard before on the same topic is no
 * sign of life, however often the broker gives it again. The newest {@link #MOST} topics are remembered. For one thread at a time.
 */
final class KeptMessages {
    /** The most topics that are remembered. */
    static final int MOST = 1024;

    private final Map<String, Marks> heard = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Marks> eldest) {
            return size() > MOST;
        }
    };

    /** What stands for the last kept payload, and for the last that was published while we listened. */
    private record Marks(long kept, long live) {
        static final Marks NONE = new Marks(-1, -1);
    }

    /**
     * Whether a message says what was heard before on its topic.
     *
     * @param topic the topic
     * @param payload what the broker has kept
     * @return true if its last message, or the last one that was kept, was the same
     */
    boolean isHeard(String topic, byte[] payload) {
        Marks marks = heard.getOrDefault(topic, Marks.NONE);
        long mark = mark(payload);
        return mark == marks.kept || mark == marks.live;
    }

    /**
     * Remembers a message.
     *
     * @param topic the topic
     * @param payload what it says
     * @param retained whether the broker had kept it
     */
    void note(String topic, byte[] payload, boolean retained) {
        Marks before = heard.getOrDefault(topic, Marks.NONE);
        long mark = mark(payload);
        heard.put(topic, retained ? new Marks(mark, before.live) : new Marks(before.kept, mark));
    }

    private static long mark(byte[] payload) {
        CRC32 sum = new CRC32();
        sum.update(payload);
        return (long) payload.length << Integer.SIZE | sum.getValue();
    }
}
