package dev.lampwright.broker;

import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.Printable;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Trouble;
import java.time.Duration;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One of those who share a connection. What it hears there waits in its inbox and is read as {@code messages}, so that one that is slow, stuck or
 * failing does not delay the others.
 *
 * <p>What the broker has kept is passed on only if nothing has come on the same topic since this joined or the connection was made: later ones are
 * meant for others, or are older than what was heard.
 */
final class Subscriber {
    private static final Logger LOG = LoggerFactory.getLogger(Subscriber.class);
    private static final Duration LONGEST_END = Duration.ofMillis(300);
    private static final int MOST_AT_ONCE = 16;
    private static final Duration LONGEST_MOVE = Duration.ofSeconds(5);
    private static final long LOSS_OVER_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final SharedBrokers brokers;
    private final SharedBrokers.Place place;
    private final List<String> topicFilters;
    private final Predicate<String> leftToOthers;
    private final Consumer<HeardMessage> sink;
    private final Inbox inbox;
    private final LongAdder messages = new LongAdder();
    private final Trouble loss = new Trouble(LOG);
    private final Hands.Job reading;
    private final String rig = RigName.current();
    private final Flood flood;
    private final AtomicBoolean isMoving = new AtomicBoolean();
    private volatile Optional<SharedConnection> shared = Optional.empty();
    private volatile BrokerState subscribed = new BrokerState(BrokerState.Phase.CONNECTING, "");
    private volatile boolean isClosed;
    private boolean failing;
    private long lostBefore;
    private long lostAtNanos;
    private final Map<String, Boolean> heard = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Boolean> eldest) {
            return size() > KeptMessages.MOST;
        }
    };

    /**
     * Prepares; {@link #start} starts.
     *
     * @param brokers where to join
     * @param place which connection to share
     * @param topicFilters what to subscribe to
     * @param leftToOthers topics that are not passed on although a filter matches
     * @param sink where messages go
     * @param hands who reads messages
     */
    Subscriber(
            SharedBrokers brokers,
            SharedBrokers.Place place,
            List<String> topicFilters,
            Predicate<String> leftToOthers,
            Consumer<HeardMessage> sink,
            Hands hands) {
        this.brokers = brokers;
        this.place = place;
        this.topicFilters = topicFilters;
        this.leftToOthers = leftToOthers;
        this.sink = sink;
        flood = brokers.flood();
        reading = hands.take("messages", this::read, () -> {});
        inbox = new Inbox(reading::hurry);
    }

    List<String> topicFilters() {
        return topicFilters;
    }

    void start() {
        reading.start();
        brokers.join(place, this);
    }

    boolean isAlive() {
        return reading.isAlive() && shared.filter(SharedConnection::isAlive).isPresent();
    }

    /** It hears over this connection from now on, and over no other. */
    void joins(SharedConnection connection) {
        shared = Optional.of(connection);
    }

    private boolean hearsOver(SharedConnection connection) {
        return shared.filter(connection::equals).isPresent();
    }

    /** A shared connection has been made, and the broker sends all that it has kept. */
    void connectedAnew(SharedConnection connection) {
        if (hearsOver(connection)) {
            synchronized (heard) {
                heard.clear();
            }
        }
    }

    /** The broker has answered to all subscriptions. */
    void subscribed(Collection<String> refused) {
        subscribed = !topicFilters().isEmpty() && refused.containsAll(topicFilters())
                ? new BrokerState(BrokerState.Phase.LOST, FixedSubscriptions.refusal(topicFilters()))
                : new BrokerState(BrokerState.Phase.CONNECTED, "");
    }

    /** A shared connection has ended. */
    void notSubscribed(SharedConnection ended) {
        if (hearsOver(ended)) {
            subscribed = new BrokerState(BrokerState.Phase.CONNECTING, "");
        }
    }

    /**
     * Takes a message that one of its filters matches. Never waits.
     *
     * @param message the message
     * @param isOnly whether no other listener gets it
     * @param from the connection that it came over
     */
    void put(HeardMessage message, boolean isOnly, SharedConnection from) {
        if (!hearsOver(from) || leftToOthers.test(message.topic()) || isMeantForOthers(message)) {
            return;
        }
        messages.increment();
        inbox.put(message);
        if (isOnly && flood.add(System.nanoTime()) && !from.isAlone(this) && isMoving.compareAndSet(false, true)) {
            moveApart();
        }
    }

    private boolean isMeantForOthers(HeardMessage message) {
        synchronized (heard) {
            boolean isFirst = heard.put(message.topic(), true) == null;
            return message.isRetained() && !isFirst;
        }
    }

    /**
     * Moves to a connection of its own, because of a flood that only this listener gets. A broker keeps a queue for each connection, and once
     * that is full it drops messages, no matter whom they are for. The old connection is used until the move, so nothing is heard twice or out of
     * order.
     */
    private void moveApart() {
        RigName.during(rig, () -> {
            Thread move = new Thread(this::joinAnother, RigName.thread("printer move"));
            move.setDaemon(true);
            move.start();
        });
    }

    private void joinAnother() {
        SharedConnection next = brokers.apart(place, rig);
        next.join(this);
        if (next.awaitConnected(LONGEST_MOVE) && goOver(next)) {
            LOG.warn(
                    "{} more than {} messages a second; this rig has a connection of its own for them now, so that"
                            + " other rigs lose nothing; check what is published",
                    place.floods(),
                    Flood.PER_SECOND);
        } else {
            brokers.leave(place, next, this);
        }
        isMoving.set(false);
    }

    private boolean goOver(SharedConnection next) {
        SharedConnection before;
        synchronized (this) {
            if (isClosed) {
                return false;
            }
            before = shared.orElseThrow();
            joins(next);
        }
        brokers.leave(place, before, this);
        return true;
    }

    private synchronized Optional<SharedConnection> leaving() {
        isClosed = true;
        return shared;
    }

    /** Reads what waits, but only so much that others get their turn. */
    private long read() {
        for (int i = 0; i < MOST_AT_ONCE; i++) {
            Optional<HeardMessage> next = inbox.poll();
            if (next.isEmpty()) {
                return isClosed ? Hands.DONE : Hands.UNTIL_HURRIED;
            }
            read(next.get());
        }
        return 0;
    }

    /** Of failures that follow each other, the first is logged. */
    private void read(HeardMessage message) {
        tellLoss(System.nanoTime());
        try {
            sink.accept(message);
            failing = false;
        } catch (RuntimeException | StackOverflowError e) {
            if (!failing) {
                LOG.error("a message on {} could not be processed", Printable.beginning(message.topic(), 100), e);
            }
            failing = true;
        }
    }

    private void tellLoss(long nanos) {
        long lost = inbox.lost();
        if (lost != lostBefore) {
            lostBefore = lost;
            lostAtNanos = nanos;
            loss.begins(
                    "messages arrive faster than they can be read; some are skipped, and the newest on each topic"
                            + " counts; check which printer publishes so many",
                    nanos);
        } else if (loss.isOn() && nanos - lostAtNanos > LOSS_OVER_NANOS) {
            loss.ends("no more messages are skipped");
        }
    }

    /** Whether it is connected and subscribed, and if not, why. */
    BrokerState state() {
        BrokerState common =
                shared.map(SharedConnection::state).orElse(new BrokerState(BrokerState.Phase.CONNECTING, ""));
        return common.phase() == BrokerState.Phase.CONNECTED ? subscribed : common;
    }

    /** How many messages have come. */
    long messages() {
        return messages.sum();
    }

    /** Passes nothing more on, and leaves the connection. */
    void close() {
        inbox.shut();
        leaving().ifPresent(joined -> brokers.leave(place, joined, this));
        reading.hurry();
        if (!reading.isCurrent()) {
            awaitEnd();
        }
    }

    private void awaitEnd() {
        try {
            reading.join(LONGEST_END.toNanos());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
