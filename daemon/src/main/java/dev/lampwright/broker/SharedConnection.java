package dev.lampwright.broker;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One connection to a broker for many listeners, subscribed to what any of them wants, to each filter once. Listeners come and go while it stands; what the
 * others hear is not interrupted.
 *
 * <p>A filter is subscribed to again for each newcomer, even if it already is, because only then does the broker send its retained
 * messages again (MQTT 3.1.1, section 3.8.4). {@link Subscriber} leaves out what it has already heard on the same topic.
 */
final class SharedConnection implements Subscriptions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SharedConnection.class);
    /** Some brokers limit how many filters one packet may have; all that are known of allow more than a few, and few are sent at once. */
    private static final int MOST_AT_ONCE = 100;

    private static final long LOOK_EVERY_NANOS = TimeUnit.MILLISECONDS.toNanos(20);
    private static final long REFUSED_AGAIN_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final String where;
    private final BrokerClient client;
    private final Turnstile turnstile = new Turnstile();
    private final Rounds rounds = new Rounds();
    private final Wills wills;
    private final Set<Outbox> speaking = new LinkedHashSet<>();
    private final KeptOpen keptOpen = new KeptOpen();
    private final Set<Subscriber> listeners = new LinkedHashSet<>();
    private final Set<String> subscribed = new LinkedHashSet<>();
    private final Set<String> refused = new LinkedHashSet<>();
    private final Set<String> asked = new LinkedHashSet<>();
    private volatile TopicIndex<Subscriber> index = new TopicIndex<>(Map.of());
    private volatile boolean isNew;
    private long refusedAtNanos;

    /** What is to be done at the broker, for whom. */
    private record Errand(List<String> subscribe, List<String> unsubscribe, List<Subscriber> listeners) {}

    /**
     * Makes a connection without listeners; {@link #start} starts it.
     *
     * @param broker where the broker is and how to get in
     * @param patience how long to wait
     * @param gate if there is a main connection to the same broker: how things stand with it
     */
    SharedConnection(Broker broker, Patience patience, Optional<Gate> gate) {
        where = BrokerClient.where(broker);
        client = new BrokerClient(broker, this, this::hear, patience, gate, rounds);
        wills = new Wills(broker, patience, turnstile);
    }

    void start() {
        client.start();
    }

    boolean isAlive() {
        return client.isAlive();
    }

    BrokerState state() {
        return client.state();
    }

    /**
     * Waits until it is connected and subscribed.
     *
     * @param most how long to wait
     * @return whether it is; false as well if this thread is to end
     */
    boolean awaitConnected(Duration most) {
        long end = System.nanoTime() + most.toNanos();
        while (state().phase() != BrokerState.Phase.CONNECTED && System.nanoTime() - end < 0) {
            LockSupport.parkNanos(LOOK_EVERY_NANOS);
        }
        return state().phase() == BrokerState.Phase.CONNECTED;
    }

    /** Whether it has the only one. */
    synchronized boolean isAlone(Subscriber listener) {
        return listeners.size() == 1 && listeners.contains(listener);
    }

    /** What is published over it. */
    Rounds rounds() {
        return rounds;
    }

    /** The wills of those who publish over it. */
    Wills wills() {
        return wills;
    }

    /** Somebody publishes over it from now on, as soon as that is in its {@link #rounds}. */
    synchronized void speaks(Outbox outbox) {
        speaking.add(outbox);
    }

    /** Somebody publishes nothing more over it. */
    synchronized void silence(Outbox outbox) {
        speaking.remove(outbox);
        rounds.remove(outbox);
    }

    /** Whether nobody listens or publishes. */
    synchronized boolean isUnused() {
        return listeners.isEmpty() && speaking.isEmpty();
    }

    /** Open while it is connected. */
    Turnstile turnstile() {
        return turnstile;
    }

    /** Adds a listener. It hears what comes from now on, and soon what the broker has kept. */
    synchronized void join(Subscriber listener) {
        listeners.add(listener);
        asked.addAll(listener.topicFilters());
        listenersChanged();
    }

    /** Takes a listener out. */
    synchronized void leave(Subscriber listener) {
        listeners.remove(listener);
        listenersChanged();
    }

    private void listenersChanged() {
        index = new TopicIndex<>(wanted());
        isNew = true;
        client.lookAtSubscriptions();
    }

    private Map<String, List<Subscriber>> wanted() {
        Map<String, List<Subscriber>> wanted = new HashMap<>();
        for (Subscriber listener : listeners) {
            listener.topicFilters()
                    .forEach(filter -> wanted.computeIfAbsent(filter, any -> new ArrayList<>())
                            .add(listener));
        }
        return wanted;
    }

    private void hear(String topic, byte[] payload, boolean retained) {
        Collection<Subscriber> hearing = index.find(topic);
        if (hearing.isEmpty()) {
            return;
        }
        HeardMessage message = new HeardMessage(topic, payload, retained);
        if (hearing.size() > 1) {
            keptOpen.add(message);
        }
        hearing.forEach(listener -> listener.put(message, hearing.size() == 1, this));
    }

    @Override
    public List<String> begin(BrokerSession session) throws BrokerException, InterruptedException {
        synchronized (this) {
            listeners.forEach(listener -> listener.connectedAnew(this));
            asked.addAll(wanted().keySet());
        }
        settle(session);
        synchronized (this) {
            return List.copyOf(refused);
        }
    }

    @Override
    public void begun() {
        turnstile.open();
    }

    @Override
    public void follow(BrokerSession session) throws BrokerException, InterruptedException {
        if (isNew || isTimeToAskAgain()) {
            Set<String> before = refusedNow();
            settle(session);
            tell(before, refusedNow());
        }
    }

    private synchronized boolean isTimeToAskAgain() {
        if (refused.isEmpty() || System.nanoTime() - refusedAtNanos < REFUSED_AGAIN_NANOS) {
            return false;
        }
        asked.addAll(refused);
        return true;
    }

    private synchronized Set<String> refusedNow() {
        return new LinkedHashSet<>(refused);
    }

    private void tell(Set<String> before, Set<String> now) {
        List<String> more = now.stream().filter(Predicate.not(before::contains)).toList();
        if (!more.isEmpty()) {
            LOG.warn("{}: refuses the subscription to {}; check its access list", where, String.join(", ", more));
        }
    }

    private void settle(BrokerSession session) throws BrokerException, InterruptedException {
        Errand errand = errand();
        for (List<String> some : parts(errand.subscribe())) {
            subscribed(some, session.subscribe(some));
        }
        for (List<String> some : parts(errand.unsubscribe())) {
            session.unsubscribe(some);
        }
        settled(errand);
    }

    private synchronized Errand errand() {
        isNew = false;
        Set<String> wanted = wanted().keySet();
        List<String> subscribe = asked.stream().filter(wanted::contains).toList();
        asked.clear();
        List<String> unsubscribe =
                subscribed.stream().filter(Predicate.not(wanted::contains)).toList();
        unsubscribe.forEach(subscribed::remove);
        refused.retainAll(wanted);
        return new Errand(subscribe, unsubscribe, List.copyOf(listeners));
    }

    private synchronized void subscribed(List<String> some, List<String> refusedOfThem) {
        subscribed.addAll(some);
        refusedOfThem.forEach(subscribed::remove);
        some.forEach(refused::remove);
        refused.addAll(refusedOfThem);
        refusedAtNanos = System.nanoTime();
    }

    private synchronized void settled(Errand errand) {
        errand.listeners().forEach(listener -> listener.subscribed(refused));
    }

    private static List<List<String>> parts(List<String> filters) {
        List<List<String>> parts = new ArrayList<>();
        for (int start = 0; start < filters.size(); start += MOST_AT_ONCE) {
            parts.add(filters.subList(start, Math.min(filters.size(), start + MOST_AT_ONCE)));
        }
        return parts;
    }

    @Override
    public void ended() {
        turnstile.shut();
        wills.doubt();
        synchronized (this) {
            subscribed.clear();
            refused.clear();
            listeners.forEach(listener -> listener.notSubscribed(this));
        }
    }

    @Override
    public void close() {
        client.close();
        wills.close();
    }

    /** The newest messages that are kept as they were read, so that not every listener has to read them. For one thread. */
    static final class KeptOpen {
        /** Of payload. JSON may take forty times as much once it is read: a value has two bytes or more, and takes some eighty. */
        static final int MOST_BYTES = 128 << 10;

        private final Deque<HeardMessage> newest = new ArrayDeque<>();
        private long bytes;

        void add(HeardMessage message) {
            newest.add(message);
            bytes += message.payload().length;
            while (newest.size() > Inbox.MOST || (bytes > MOST_BYTES && newest.size() > 1)) {
                HeardMessage oldest = newest.remove();
                bytes -= oldest.payload().length;
                oldest.forget();
            }
        }
    }
}
