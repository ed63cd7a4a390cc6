package dev.lampwright.broker;

import java.util.function.Function;

/** A message that several may take, each on a thread of its own. What one of them has read in its payload is there for the others. */
public final class HeardMessage {
    private final String topic;
    private final byte[] payload;
    private final boolean retained;
    private Object opened;
    private boolean forgets;

    /**
     * A message as it came.
     *
     * @param topic the topic it was published on
     * @param payload its payload, which must not change any more
     * @param retained whether the broker had kept it from before the subscription
     */
    public HeardMessage(String topic, byte[] payload, boolean retained) {
        this.topic = topic;
        this.payload = payload;
        this.retained = retained;
    }

    public String topic() {
        return topic;
    }

    /** What it carries; not to be changed. */
    public byte[] payload() {
        return payload;
    }

    /** Whether the broker had kept it from before the subscription. */
    public boolean isRetained() {
        return retained;
    }

    /**
     * The payload, opened for reading.
     *
     * @param open opens it; always the same function for one message
     * @param <T> what it is then
     * @return what the first call made, for as long as that is kept
     */
    @SuppressWarnings("unchecked")
    public synchronized <T> T opened(Function<byte[], T> open) {
        if (opened != null) {
            return (T) opened;
        }
        T made = open.apply(payload);
        opened = forgets ? null : made;
        return made;
    }

    /** Keeps nothing of what has been read in it. Whoever takes it later reads it again. */
    synchronized void forget() {
        forgets = true;
        opened = null;
    }
}
