package dev.lampwright.broker;

import java.nio.charset.StandardCharsets;

/**
 * How the daemon is spoken to over the broker, and what it says of itself.
 *
 * @param topics where
 * @param lost what its status is once the broker has lost it
 * @param goodbye what its status is once it has left in good order
 * @param asks takes what is asked for
 */
public record Contact(OwnTopics topics, String lost, String goodbye, Asks asks) {
    /** Takes what is asked for. */
    @FunctionalInterface
    public interface Asks {
        /**
         * Takes one thing. Called by one thread at a time.
         *
         * @param word what, the end of the topic
         * @param payload how, as it came
         * @param retained whether the broker had kept the message from earlier
         * @return the answer, to be published
         */
        String take(String word, byte[] payload, boolean retained);

        /**
         * Takes a status that came on the daemon's own topic: its own, or that of another one with the same topics. Called by one thread at
         * a time.
         *
         * @param topic the topic
         * @param payload the status, as it came
         * @param retained whether the broker had kept the message from earlier
         */
        default void status(String topic, byte[] payload, boolean retained) {}
    }

    /** What the broker is told for when the daemon is gone. */
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
