package dev.lampwright.broker;

import java.util.Arrays;

/** A message that can be published. Two are the same only if they are the same object. */
final class Outgoing {
    private final String topic;
    private final byte[] payload;
    private final boolean retained;

    /**
     * Creates one.
     *
     * @param topic the topic, without wildcards
     * @param payload the payload; it is copied
     * @param retained whether the broker retains it
     * @throws IllegalArgumentException if MQTT does not allow the topic; the message says why
     */
    Outgoing(String topic, byte[] payload, boolean retained) {
        TopicFilter.nameProblem(topic).ifPresent(problem -> {
            throw new IllegalArgumentException(problem);
        });
        this.topic = topic;
        this.payload = Arrays.copyOf(payload, payload.length);
        this.retained = retained;
    }

    String topic() {
        return topic;
    }

    /** Must not be modified. */
    byte[] payload() {
        return payload;
    }

    boolean isRetained() {
        return retained;
    }
}
