package dev.lampwright.broker;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;

/** Speaks to a running daemon over its broker, once. */
public final class Caller {
    private static final long LOOK_EVERY_MS = 20;

    private final Broker broker;
    private final OwnTopics topics;
    private final Duration patience;

    /**
     * Makes a caller.
     *
     * @param broker where the daemon's broker is and how to get in
     * @param topics the daemon's own topics
     * @param patience how long to wait for the broker, and again for the daemon
     */
    public Caller(Broker broker, OwnTopics topics, Duration patience) {
        this.broker = broker;
        this.topics = topics;
        this.patience = patience;
    }

    /**
     * Asks for something.
     *
     * @param word what
     * @param payload how
     * @param mine whether an answer is to this question
     * @return the answer
     * @throws IOException if the broker cannot be reached or nobody answers; the message says what to do
     * @throws InterruptedException if the thread is interrupted
     */
    public String ask(String word, String payload, Predicate<String> mine) throws IOException, InterruptedException {
        CompletableFuture<String> answer = new CompletableFuture<>();
        MessageSink sink = (topic, bytes, retained) -> {
            String text = new String(bytes, StandardCharsets.UTF_8);
            if (mine.test(text)) {
                answer.complete(text);
            }
        };
        try (BrokerClient client = connected(topics.answer(), sink)) {
            client.publish(topics.ask(word), payload.getBytes(StandardCharsets.UTF_8), false);
            return await(answer, "nobody answers on " + topics.answer());
        }
    }

    /**
     * How the daemon does.
     *
     * @return its status, as the broker has kept it
     * @throws IOException if the broker cannot be reached or has kept none; the message says what to do
     * @throws InterruptedException if the thread is interrupted
     */
    public String status() throws IOException, InterruptedException {
        CompletableFuture<String> status = new CompletableFuture<>();
        MessageSink sink = (topic, bytes, retained) -> status.complete(new String(bytes, StandardCharsets.UTF_8));
        BrokerClient client = connected(topics.status(), sink);
        try {
            return await(status, "there is no status on " + topics.status());
        } finally {
            client.close();
        }
    }

    private BrokerClient connected(String topic, MessageSink sink) throws IOException, InterruptedException {
        BrokerClient client = new BrokerClient(broker, List.of(topic), sink, Optional.empty());
        client.start();
        long deadline = System.nanoTime() + patience.toNanos();
        BrokerState state = client.state();
        while (state.phase() != BrokerState.Phase.CONNECTED) {
            if (state.phase() == BrokerState.Phase.LOST || System.nanoTime() - deadline >= 0) {
                client.close();
                String reason = state.reason().isEmpty() ? "does not answer" : state.reason();
                throw new IOException("broker " + broker.url() + ": " + reason);
            }
            TimeUnit.MILLISECONDS.sleep(LOOK_EVERY_MS);
            state = client.state();
        }
        return client;
    }

    private String await(CompletableFuture<String> future, String otherwise) throws IOException, InterruptedException {
        try {
            return future.get(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            throw new IOException(
                    otherwise + " at broker " + broker.url()
                            + "; check that the daemon is running there and that its desk.prefix is \""
                            + topics.prefix()
                            + "\"",
                    e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }
}
