package dev.lampwright.broker;

import java.util.Optional;

/**
 * The daemon's own topics, all under one prefix: {@code PREFIX/ask/…} for asks, {@code PREFIX/answer} for answers, and
 * {@code PREFIX/status}, retained, for its status.
 *
 * @param prefix their common prefix, without a trailing slash, by the rules of MQTT 3.1.1, section 4.7
 */
public record OwnTopics(String prefix) {
    private static final String ASK = "/ask/";

    /**
     * The topic of one ask.
     *
     * @param word the ask
     * @return a topic
     */
    public String ask(String word) {
        return prefix + ASK + word;
    }

    /**
     * The topic of answers.
     *
     * @return a topic
     */
    public String answer() {
        return prefix + "/answer";
    }

    /**
     * The topic of the daemon's status.
     *
     * @return a topic
     */
    public String status() {
        return prefix + "/status";
    }

    /** The topic filter for all asks. */
    public String asks() {
        return prefix + ASK + "#";
    }

    /** Whether a topic is one of these, so that it cannot belong to a printer. */
    public boolean own(String topic) {
        return topic.startsWith(prefix + "/");
    }

    /** The ask of a topic; empty if it is not one. */
    Optional<String> askedOn(String topic) {
        return topic.startsWith(prefix + ASK)
                ? Optional.of(topic.substring(prefix.length() + ASK.length()))
                : Optional.empty();
    }
}
