package dev.lampwright.broker;

/** Where messages go. */
@FunctionalInterface
public interface MessageSink {
    /**
     * A message has come. It is called by one thread at a time and must be quick: what it does holds up the next message.
     *
     * @param topic the topic it was published on
     * @param payload its payload, which now belongs to the callee; cut if it was longer than {@link BrokerClient#MOST_BYTES}
     * @param retained whether the broker had kept it from before the subscription
     */
    void heard(String topic, byte[] payload, boolean retained);
}
