package dev.lampwright.broker;

import java.nio.charset.StandardCharsets;

/**
 * How the daemon is reached through the broker, and what it reports about itself.
 *
 * @param topics its topics
 * @param lost its status once the broker has lost the connection
 * @param goodbye its status after a clean shutdown
 * @param asks receives asks
 */
public record Contact(OwnTopics topics, String lost, String goodbye, Asks asks) {
    /** Receives asks. */
    @FunctionalInterface
    public interface Asks {
        /**
         * Handles one ask. Called by one thread at a time.
         *
         * @param word the ask, the end of the topic
         * @param payload its payload, as received
         * @param retained whether it was retained
         * @return the answer to publish
         */
        String take(String word, byte[] payload, boolean retained);

        /**
         * Handles a status on the daemon's own topic: its own, or that of another daemon with the same topics. Called by one thread at a
         * time.
         *
         * @param topic the topic
         * @param payload the status, as received
         * @param retained whether it was retained
         */
        default void status(String topic, byte[] payload, boolean retained) {}
    }

    /** The last will for the broker. */
    public Will will() {
        return new Will(topics.status(), lost, goodbye);
    }

    /** Takes what is asked for on a topic, or a status; does nothing on others. */
    public void take(String topic, byte[] payload, boolean retained, Connection connection) {
        if (topic.equals(topics.status())) {
            asks.status(topic, payload, retained);
        }
        topics.askedOn(topic)
                .map(word -> asks.take(word, payload, retained))
                .ifPresent(
                        answer -> connection.publish(topics.answer(), answer.getBytes(StandardCharsets.UTF_8), false));
    }
}
