package dev.lampwright.broker;

import dev.lampwright.upkeep.Backoff;
import dev.lampwright.upkeep.Printable;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Trouble;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.BiConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps connected to a broker, passes on what is published there, and publishes what it is given. It tries again until it is closed, whatever happens, and
 * tells the log once what is wrong and once when all is well again. Messages come on a thread of the client library, never two
 * at a time; the thread {@code printer} does all the rest.
 */
public final class BrokerClient implements AutoCloseable {
    /** A message is cut to about this many bytes, so that none can fill the memory. */
    public static final int MOST_BYTES = 2 << 20;

    private static final Logger LOG = LoggerFactory.getLogger(BrokerClient.class);
    private static final Duration CLOSING = Duration.ofMillis(1500);
    private static final int ID_RANDOM_BYTES = 6;

    private final Broker broker;
    private final String where;
    private final List<String> topicFilters;
    private final MessageSink sink;
    private final Optional<Will> will;
    private final Outbox outbox = new Outbox();
    private final Patience patience;
    private final Backoff backoff;
    private final String clientId = randomId();
    private final Trouble trouble = new Trouble(LOG);
    private final LongAdder messages = new LongAdder();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final BiConsumer<Thread, Throwable> dying = this::died;
    private final BrokerThreads threads = new BrokerThreads(dying);
    private final Thread thread;
    private volatile BrokerState state = new BrokerState(BrokerState.Phase.CONNECTING, "");
    private volatile BrokerSession session;
    private boolean wasConnected;

    /**
     * Prepares; {@link #start} starts.
     *
     * @param broker where the broker is and how to get in
     * @param topicFilters what to subscribe to: at least one, all well-formed
     * @param sink where messages go
     * @param will what is to be published when we are gone; empty if nobody is to be told
     */
    public BrokerClient(Broker broker, List<String> topicFilters, MessageSink sink, Optional<Will> will) {
        this(broker, topicFilters, sink, will, Patience.USUAL);
    }

    public BrokerClient(
            Broker broker, List<String> topicFilters, MessageSink sink, Optional<Will> will, Patience patience) {
        this.broker = broker;
        this.where = "broker " + where(broker.url());
        this.topicFilters = List.copyOf(topicFilters);
        this.sink = sink;
        this.will = will;
        this.patience = patience;
        this.backoff = new Backoff(patience.firstPause(), patience.longestPause(), Math::random);
        this.thread = new Thread(threads, this::run, RigName.thread("printer"));
        thread.setDaemon(true);
    }

    /** An id of 23 characters, which every broker must allow (MQTT 3.1.1, section 3.1.3.1). */
    private static String randomId() {
        byte[] random = new byte[ID_RANDOM_BYTES];
        new SecureRandom().nextBytes(random);
        return "lampwright-" + HexFormat.of().formatHex(random);
    }

    private static String where(URI url) {
        return url.getScheme() + "://" + url.getHost() + ":" + port(url);
    }

    private static int port(URI url) {
        return url.getPort() >= 0 ? url.getPort() : isSecure(url) ? 8883 : 1883;
    }

    private static boolean isSecure(URI url) {
        return url.getScheme().equals("mqtts");
    }

    /** Starts to connect, and returns at once. To be called once. */
    public void start() {
        thread.start();
    }

    /**
     * Whether the thread runs.
     *
     * @return false before {@link #start} and after {@link #close}
     */
    public boolean isAlive() {
        return thread.isAlive();
    }

    /**
     * Publishes soon, and returns at once; callable from any thread. While there is no connection, messages wait for the next. Of
     * retained messages only the newest of a topic is published, and it is published again after each new connection. Of the others
     * each is published once, in their order. The oldest are dropped if more than 64 wait. After {@link #close} nothing is taken.
     *
     * @param topic where, 1 to 65535 bytes of UTF-8 without wildcards
     * @param payload what; it is copied
     * @param retained whether the broker is to keep it for those who subscribe later
     * @throws IllegalArgumentException if MQTT does not allow the topic; the message says why
     */
    public void publish(String topic, byte[] payload, boolean retained) {
        outbox.put(new Outgoing(topic, payload, retained));
    }

    /**
     * Publishes what still waits and the will's goodbye, if the broker takes it, and ends the connection and the thread. It takes
     * 1.5 s at most, whatever the broker does. After this no message is passed on.
     */
    @Override
    public void close() {
        will.ifPresent(last -> publish(last.topic(), last.goodbye().getBytes(StandardCharsets.UTF_8), true));
        outbox.shut();
        closing.countDown();
        thread.interrupt();
        try {
            thread.join(CLOSING.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        threads.endSenders();
    }

    /**
     * How things stand.
     *
     * @return the newest
     */
    public BrokerState state() {
        return state;
    }

    /**
     * How many messages have come.
     *
     * @return a count since the start
     */
    public long messages() {
        return messages.sum();
    }

    private void run() {
        Secrets.warnings(broker).forEach(LOG::warn);
        try {
            while (!isClosing()) {
                lost(stayConnected());
                closing.await(backoff.next().toNanos(), TimeUnit.NANOSECONDS);
            }
        } catch (InterruptedException e) {
            LOG.debug("{}: interrupted, which closing does", where);
        }
        state = new BrokerState(BrokerState.Phase.LOST, "closed");
    }

    private boolean isClosing() {
        return closing.getCount() == 0;
    }

    private void lost(BrokerException failure) {
        state = new BrokerState(BrokerState.Phase.LOST, failure.getMessage());
        trouble.begins(
                failure.getMessage(),
                where + ": " + failure.getMessage() + "; trying again until it works",
                System.nanoTime());
    }

    /** Connects, stays connected for as long as it goes, and returns why it went no longer. */
    private BrokerException stayConnected() throws InterruptedException {
        state = new BrokerState(BrokerState.Phase.CONNECTING, state.reason());
        threads.endSenders();
        try {
            return stayConnected(Login.of(broker), socket());
        } catch (BrokerException e) {
            return e;
        } catch (RuntimeException | Error e) {
            LOG.debug("{}: unexpected", where, e);
            return BrokerWords.failure(e);
        }
    }

    private BrokerException stayConnected(Login login, BrokerSocket socket)
            throws BrokerException, InterruptedException {
        try (BrokerSession current = new BrokerSession(clientId, socket, patience, this::pass, outbox)) {
            session = current;
            current.open(login, will);
            outbox.again();
            connected(current.subscribe(topicFilters));
            return current.awaitEnd();
        }
    }

    private BrokerSocket socket() throws BrokerException {
        URI url = broker.url();
        return new BrokerSocket(
                url.getHost(),
                port(url),
                isSecure(url) ? Optional.of(Tls.sockets(broker)) : Optional.empty(),
                patience.network(),
                MOST_BYTES);
    }

    private void connected(List<String> refused) throws BrokerException {
        if (refused.size() == topicFilters.size()) {
            throw new BrokerException(
                    "the broker refuses the subscription to " + String.join(", ", refused) + "; check its access list");
        }
        backoff.reset();
        state = new BrokerState(BrokerState.Phase.CONNECTED, "");
        tellConnected();
        if (!refused.isEmpty()) {
            LOG.warn("{}: refuses the subscription to {}; check its access list", where, String.join(", ", refused));
        }
    }

    private void tellConnected() {
        String line = where + ": connected";
        if (!trouble.ends(line) && !wasConnected) {
            LOG.info("{}", line);
        }
        wasConnected = true;
    }

    private synchronized void pass(String topic, byte[] payload, boolean retained) {
        if (isClosing()) {
            return;
        }
        messages.increment();
        try {
            sink.heard(topic, payload, retained);
        } catch (RuntimeException e) {
            LOG.error("{}: a message on {} could not be processed", where, Printable.beginning(topic, 100), e);
        }
    }

    private void died(Thread dead, Throwable failure) {
        if (dead == thread) {
            LOG.error("{}: no longer followed; restart lampwright", where, failure);
        }
        BrokerSession current = session;
        if (current != null) {
            current.end(failure);
        }
    }
}
