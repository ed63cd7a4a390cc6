package dev.lampwright.broker;

/** Receives messages. */
@FunctionalInterface
public interface MessageSink {
    /**
     * Receives a message. Called by one thread at a time; must be quick, because it delays the next message.
     *
     * @param topic the topic it was published on
     * @param payload its payload, which now belongs to the callee; cut if it was longer than {@link BrokerClient#MOST_BYTES}
     * @param retained whether it was retained
     */
    void heard(String topic, byte[] payload, boolean retained);
}
