package dev.lampwright.tool.survey;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerClient;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.FirstContact;
import dev.lampwright.broker.TopicFilter;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** Listens to a broker and hands all it hears to a {@link Survey}. */
public final class Listener implements AutoCloseable {
    private static final long LOOK_EVERY_MS = 50;

    private final Survey survey = new Survey();
    private final CountDownLatch stopped = new CountDownLatch(1);
    private final Broker broker;
    private final BrokerClient client;
    private int losses;
    private boolean isLost;
    private String lastReason = "";

    /** Receives what is known so far, repeatedly. */
    @FunctionalInterface
    public interface Watcher {
        /**
         * Receives the current findings. It delays nothing but the next call.
         *
         * @param survey what has been heard
         * @param connected whether the broker has accepted the login
         */
        void look(Survey survey, boolean connected);
    }

    /**
     * Prepares; nothing is sent yet.
     *
     * @param broker where the broker is and how to log in
     * @param topicFilter what to listen to, {@code #} for all
     * @throws IllegalArgumentException if the topic filter is malformed; the message says how
     */
    public Listener(Broker broker, String topicFilter) {
        this.broker = broker;
        TopicFilter.of(topicFilter);
        client = new BrokerClient(
                broker,
                List.of(topicFilter),
                (topic, payload, retained) -> survey.hear(topic, payload, System.nanoTime()),
                Optional.empty());
    }

    /**
     * Listens to a broker for some time.
     *
     * @param broker where the broker is and how to log in
     * @param topicFilter what to listen to, {@code #} for all
     * @param duration how long, from the accepted login on
     * @return what was found
     * @throws IOException if the broker does not accept the login; the message is for the user
     * @throws InterruptedException if the thread is interrupted
     */
    public static Proposal listen(Broker broker, String topicFilter, Duration duration)
            throws IOException, InterruptedException {
        try (Listener listener = new Listener(broker, topicFilter)) {
            listener.listen(duration, (survey, connected) -> {});
            return listener.survey().proposal();
        }
    }

    /**
     * Listens until the time is over or {@link #stop} is called. Call it once.
     *
     * @param duration how long, from the accepted login on
     * @param watcher called about twenty times a second
     * @throws IOException if the broker does not accept the login; the message is for the user
     * @throws InterruptedException if the thread is interrupted
     */
    public void listen(Duration duration, Watcher watcher) throws IOException, InterruptedException {
        client.start();
        if (!FirstContact.await(client, broker.url(), stopped, () -> watcher.look(survey, false))) {
            return;
        }
        long startNanos = System.nanoTime();
        do {
            noteLoss(client.state());
            watcher.look(survey, true);
        } while (!stopped.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)
                && System.nanoTime() - startNanos < duration.toNanos());
    }

    private void noteLoss(BrokerState state) {
        boolean isLostNow = state.phase() != BrokerState.Phase.CONNECTED;
        if (isLostNow && !isLost) {
            losses++;
        }
        if (isLostNow && !state.reason().isEmpty()) {
            lastReason = state.reason();
        }
        isLost = isLostNow;
    }

    /**
     * What went wrong with the broker after it had accepted the login. For the thread that listened, afterwards.
     *
     * @return one line for the user; empty if nothing did
     */
    public Optional<String> trouble() {
        String times = losses == 1 ? "once" : losses + " times";
        return losses == 0
                ? Optional.empty()
                : Optional.of("broker " + broker.url() + ": lost the connection " + times
                        + " while listening; the last reason: " + lastReason);
    }

    /**
     * What has been heard.
     *
     * @return the same each time
     */
    public Survey survey() {
        return survey;
    }

    /** Ends the listening soon; may be called from any thread. */
    public void stop() {
        stopped.countDown();
    }

    /** Ends the connection. It takes 1.5 s at most, whatever the broker does. */
    @Override
    public void close() {
        client.close();
    }
}
