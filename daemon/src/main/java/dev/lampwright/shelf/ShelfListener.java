package dev.lampwright.shelf;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerClient;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.FirstContact;
import dev.lampwright.broker.OwnTopics;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;

/** Listens to a broker for the statuses of all rigs and puts them on a {@link Shelf}. */
public final class ShelfListener implements AutoCloseable {
    /** The maximum number of prefix levels searched. */
    public static final int DEEPEST = 8;

    /** The broker sends retained messages right after the subscription. */
    private static final long KEPT_NANOS = TimeUnit.MILLISECONDS.toNanos(700);
    /** A running daemon reports within this time, slightly more than the five seconds between reports. */
    private static final long REPORT_NANOS = TimeUnit.SECONDS.toNanos(6);

    private static final long LOOK_EVERY_MS = 50;

    private final CountDownLatch stopped = new CountDownLatch(1);
    private final Broker broker;
    private final Shelf shelf;
    private final BrokerClient client;

    /** Called repeatedly with the current shelf. */
    @FunctionalInterface
    public interface Watcher {
        /**
         * Looks at the shelf.
         *
         * @param broker the state of the connection to the broker
         */
        void look(BrokerState broker);
    }

    /**
     * Prepares; nothing is sent yet.
     *
     * @param broker where the broker is and how to log in
     * @param levels the maximum number of prefix levels, 1 to {@link #DEEPEST}
     * @param shelf receives statuses
     */
    public ShelfListener(Broker broker, int levels, Shelf shelf) {
        this.broker = broker;
        this.shelf = shelf;
        client = new BrokerClient(
                broker,
                filters(levels),
                (topic, payload, kept) -> shelf.hear(topic, payload, kept, System.nanoTime(), Instant.now()),
                Optional.empty());
    }

    /**
     * The topic filters for prefixes of one level, of two, and so on: {@code +/status}, {@code +/+/status}. All topics ({@code #}) would
     * bring everything that printers publish as well.
     *
     * @param levels how many, 1 or more
     * @return topic filters
     */
    public static List<String> filters(int levels) {
        return IntStream.rangeClosed(1, levels)
                .mapToObj(level -> new OwnTopics("+/".repeat(level - 1) + "+").status())
                .toList();
    }

    /**
     * Listens until it is certain which of the rigs known to the broker are running: usually a second, six at most.
     *
     * @throws IOException if the broker refuses the connection; the message is for the user
     * @throws InterruptedException if the thread is interrupted
     */
    public void listenOnce() throws IOException, InterruptedException {
        if (!connect(state -> {})) {
            return;
        }
        long start = System.nanoTime();
        long passed = 0;
        while (passed < KEPT_NANOS || (shelf.isUnsure(System.nanoTime()) && passed < REPORT_NANOS)) {
            if (stopped.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
                return;
            }
            passed = System.nanoTime() - start;
        }
    }

    /**
     * Listens until {@link #stop} is called.
     *
     * @param watcher called about twenty times a second
     * @throws IOException if the broker refuses the first connection; the message is for the user
     * @throws InterruptedException if the thread is interrupted
     */
    public void listen(Watcher watcher) throws IOException, InterruptedException {
        boolean goesOn = connect(watcher);
        while (goesOn) {
            noteContact();
            watcher.look(client.state());
            goesOn = !stopped.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
        }
    }

    private boolean connect(Watcher watcher) throws IOException, InterruptedException {
        client.start();
        return FirstContact.await(client, broker.url(), stopped, () -> watcher.look(client.state()));
    }

    /**
     * Starts listening, and returns at once. Connection attempts continue until the broker accepts one; call {@link #noteContact} about
     * once a second.
     */
    public void start() {
        client.start();
    }

    /** Records on the shelf whether the broker is connected. */
    public void noteContact() {
        shelf.connected(client.state().phase() == BrokerState.Phase.CONNECTED, System.nanoTime());
    }

    /** Ends the listening soon; may be called from any thread. */
    public void stop() {
        stopped.countDown();
    }

    /** Ends the connection. Takes 1.5 s at most, whatever the broker does. */
    @Override
    public void close() {
        client.close();
    }
}
