package dev.lampwright.cli;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerClient;
import dev.lampwright.payload.Payload;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.Value;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Waits until the word at a place differs from the first one. */
final class NextWord {
    private static final long LOOK_EVERY_MS = 50;

    /** Words that come faster than they are read are not needed. */
    private static final int MOST_WAITING = 100;

    private final Source source;
    private final BlockingQueue<String> words = new LinkedBlockingQueue<>(MOST_WAITING);

    NextWord(Source source) {
        this.source = source;
    }

    /**
     * Listens.
     *
     * @param broker where
     * @param patience how long at most
     * @param ended whether to give up
     * @return the word; empty if none came in time
     * @throws InterruptedException if the thread is interrupted
     */
    Optional<String> heard(Broker broker, Duration patience, BooleanSupplier ended) throws InterruptedException {
        long begun = System.nanoTime();
        Optional<String> first = Optional.empty();
        try (BrokerClient client = new BrokerClient(
                broker, List.of(source.topicFilter()), (topic, payload, retained) -> hear(payload), Optional.empty())) {
            client.start();
            while (!ended.getAsBoolean() && System.nanoTime() - begun < patience.toNanos()) {
                String word = words.poll(LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
                if (word != null && first.isPresent() && !first.get().equals(word)) {
                    return Optional.of(word);
                }
                first = first.or(() -> Optional.ofNullable(word));
            }
        }
        return Optional.empty();
    }

    private void hear(byte[] payload) {
        try {
            new Payload(payload)
                    .at(source)
                    .flatMap(Value::word)
                    .map(String::strip)
                    .ifPresent(words::offer);
        } catch (UnreadableException e) {
            // An unreadable payload has no word.
        }
    }
}
