package dev.lampwright.broker;

import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** A message that can be published. Two are the same only if they are the same object. */
final class Outgoing {
    private final String topic;
    private final byte[] payload;
    private final boolean retained;
    private final CountDownLatch written = new CountDownLatch(1);

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

    /** It has been sent to the broker. */
    void written() {
        written.countDown();
    }

    /**
     * Waits until it has been sent.
     *
     * @param most how long to wait
     * @return whether it has
     */
    boolean awaitWritten(Duration most) {
        try {
            return written.await(most.toNanos(), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
