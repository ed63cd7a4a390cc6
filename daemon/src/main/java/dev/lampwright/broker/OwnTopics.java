package dev.lampwright.broker;

import java.util.Optional;

/**
 * The daemon's own topics, all under one prefix: {@code PREFIX/ask/…} where it is asked for things, {@code PREFIX/answer} where it
 * answers, and {@code PREFIX/status}, retained, where it tells how it does.
 *
 * @param prefix beginning of them all, without a slash at its end, by the rules of MQTT 3.1.1, section 4.7
 */
public record OwnTopics(String prefix) {
    private static final String ASK = "/ask/";

    /**
     * Where one thing is asked for.
     *
     * @param word what
     * @return a topic
     */
    public String ask(String word) {
        return prefix + ASK + word;
    }

    /**
     * Where it is answered.
     *
     * @return a topic
     */
    public String answer() {
        return prefix + "/answer";
    }

    /**
     * Where the daemon tells how it does.
     *
     * @return a topic
     */
    public String status() {
        return prefix + "/status";
    }

    /** Where anything is asked for. */
    public String asks() {
        return prefix + ASK + "#";
    }

    /** Whether a topic is one of these, so that no printer can mean it. */
    public boolean own(String topic) {
        return topic.startsWith(prefix + "/");
    }

    /** What is asked for on a topic; empty if nothing is. */
    Optional<String> askedOn(String topic) {
        return topic.startsWith(prefix + ASK)
                ? Optional.of(topic.substring(prefix.length() + ASK.length()))
                : Optional.empty();
    }
}
