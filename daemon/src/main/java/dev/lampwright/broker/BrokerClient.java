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
 * Stays connected to a broker, passes on messages, and publishes what it is given. It keeps retrying until it is closed, whatever happens,
 * and logs a problem once when it begins and once when it ends. Messages come on a thread of the client library, never two at a time; the
 * thread {@code printer} does everything else.
 */
public final class BrokerClient implements Connection {
    /** A message is cut to about this many bytes, so that none can fill the memory. */
    public static final int MOST_BYTES = 2 << 20;

    private static final Logger LOG = LoggerFactory.getLogger(BrokerClient.class);
    private static final Duration CLOSING = Duration.ofMillis(1500);
    private static final int ID_RANDOM_BYTES = 6;

    private final Broker broker;
    private final String where;
    private final Subscriptions subscriptions;
    private final Optional<Gate> gate;
    private final MessageSink sink;
    private final Optional<Will> will;
    private final Outbox outbox;
    private final Post post;
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
    private Optional<BrokerException> untold = Optional.empty();

    /**
     * Prepares; {@link #start} starts.
     *
     * @param broker where the broker is and how to log in
     * @param topicFilters what to subscribe to: at least one, all well-formed
     * @param sink receives messages
     * @param will what is published when we are gone; empty if nothing
     */
    public BrokerClient(Broker broker, List<String> topicFilters, MessageSink sink, Optional<Will> will) {
        this(broker, topicFilters, sink, will, Patience.USUAL);
    }

    public BrokerClient(
            Broker broker, List<String> topicFilters, MessageSink sink, Optional<Will> will, Patience patience) {
        this(broker, new FixedSubscriptions(topicFilters, true), sink, will, patience, new Outbox());
    }

    private BrokerClient(
            Broker broker,
            Subscriptions subscriptions,
            MessageSink sink,
            Optional<Will> will,
            Patience patience,
            Outbox outbox) {
        this(broker, subscriptions, sink, will, patience, Optional.empty(), outbox, outbox);
    }

    /**
     * Prepares one for many, without a will; {@link #start} starts.
     *
     * @param broker where the broker is and how to get in
     * @param subscriptions to what
     * @param sink where messages go
     * @param patience how long to wait
     * @param gate if there is a main connection that tells the log about the broker: how things stand with it. Then this one only tells the log
     *     what is wrong while all is well with the main connection
     * @param post what it publishes; {@link #publish} is not used
     */
    BrokerClient(
            Broker broker,
            Subscriptions subscriptions,
            MessageSink sink,
            Patience patience,
            Optional<Gate> gate,
            Post post) {
        this(broker, subscriptions, sink, Optional.empty(), patience, gate, post, new Outbox());
    }

    private BrokerClient(
            Broker broker,
            Subscriptions subscriptions,
            MessageSink sink,
            Optional<Will> will,
            Patience patience,
            Optional<Gate> gate,
            Post post,
            Outbox outbox) {
        this.broker = broker;
        this.where = where(broker);
        this.subscriptions = subscriptions;
        this.sink = sink;
        this.will = will;
        this.patience = patience;
        this.gate = gate;
        this.post = post;
        this.outbox = outbox;
        this.wasConnected = gate.isPresent();
        this.backoff = new Backoff(patience.firstPause(), patience.longestPause(), Math::random);
        this.thread = new Thread(threads, this::run, RigName.thread("printer"));
        thread.setDaemon(true);
    }

    /** An id of 23 characters, which every broker must allow (MQTT 3.1.1, section 3.1.3.1). */
    static String randomId() {
        byte[] random = new byte[ID_RANDOM_BYTES];
        new SecureRandom().nextBytes(random);
        return "lampwright-" + HexFormat.of().formatHex(random);
    }

    /** How to call a broker in the log. */
    static String where(Broker broker) {
        URI url = broker.url();
        return "broker " + url.getScheme() + "://" + url.getHost() + ":" + port(url);
    }

    private static int port(URI url) {
        return url.getPort() >= 0 ? url.getPort() : isSecure(url) ? 8883 : 1883;
    }

    private static boolean isSecure(URI url) {
        return url.getScheme().equals("mqtts");
    }

    @Override
    public void start() {
        thread.start();
    }

    @Override
    public boolean isAlive() {
        return thread.isAlive();
    }

    @Override
    public void publish(String topic, byte[] payload, boolean retained) {
        outbox.put(new Outgoing(topic, payload, retained));
    }

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

    @Override
    public BrokerState state() {
        return state;
    }

    @Override
    public long messages() {
        return messages.sum();
    }

    /** Has the subscriptions looked at soon. */
    void lookAtSubscriptions() {
        post.bell().ring();
    }

    private void run() {
        if (gate.isEmpty()) {
            Secrets.warnings(broker).forEach(LOG::warn);
        }
        try {
            while (!isClosing()) {
                lookAtMain();
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

    private void lookAtMain() {
        if (gate.isPresent()) {
            boolean mainIsWell = gate.get().look();
            untold.filter(failure -> mainIsWell).ifPresent(this::tell);
        }
    }

    private void lost(BrokerException failure) {
        state = new BrokerState(BrokerState.Phase.LOST, failure.getMessage(), failure.code());
        untold = Optional.of(failure);
        if (gate.isEmpty()) {
            tell(failure);
        }
    }

    private void tell(BrokerException failure) {
        trouble.begins(
                failure.getMessage(),
                where + ": " + failure.getMessage() + "; trying again until it works",
                System.nanoTime());
    }

    /** Connects, stays connected as long as possible, and returns why the connection ended. */
    private BrokerException stayConnected() throws InterruptedException {
        state = new BrokerState(BrokerState.Phase.CONNECTING, state.reason(), state.code());
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
        try (BrokerSession current = new BrokerSession(clientId, socket, patience, this::pass, post)) {
            session = current;
            current.open(login, will);
            post.again();
            connected(subscriptions.begin(current));
            return current.awaitEnd(subscriptions);
        } finally {
            subscriptions.ended();
        }
    }

    private BrokerSocket socket() throws BrokerException {
        return socket(broker, patience);
    }

    /** A network connection to a broker, not started. Its files are read again. */
    static BrokerSocket socket(Broker broker, Patience patience) throws BrokerException {
        URI url = broker.url();
        return new BrokerSocket(
                url.getHost(),
                port(url),
                isSecure(url) ? Optional.of(Tls.sockets(broker)) : Optional.empty(),
                patience.network(),
                MOST_BYTES);
    }

    private void connected(List<String> refused) {
        backoff.reset();
        state = new BrokerState(BrokerState.Phase.CONNECTED, "");
        tellConnected();
        if (!refused.isEmpty()) {
            LOG.warn("{}: refuses the subscription to {}; check its access list", where, String.join(", ", refused));
        }
        subscriptions.begun();
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
        try {
            sink.heard(topic, payload, retained);
        } catch (RuntimeException e) {
            LOG.error("{}: a message on {} could not be processed", where, Printable.beginning(topic, 100), e);
        } finally {
            messages.increment();
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
