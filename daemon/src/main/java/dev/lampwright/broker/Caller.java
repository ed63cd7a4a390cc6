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

/** Contacts a running daemon through its broker, once. */
public final class Caller {
    private static final long LOOK_EVERY_MS = 20;

    private final Broker broker;
    private final OwnTopics topics;
    private final Duration patience;

    /**
     * Creates a caller.
     *
     * @param broker the daemon's broker
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
     * @param word the ask
     * @param payload its payload
     * @param mine whether an answer belongs to this ask
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
     * The daemon's status.
     *
     * @return its retained status
     * @throws IOException if the broker cannot be reached or has retained none; the message says what to do
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
                            + "; check that the daemon is running there, that its desk.prefix is \""
                            + topics.prefix()
                            + "\", and that the broker's access list allows this login",
                    e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }
}
