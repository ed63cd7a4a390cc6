package dev.lampwright.broker;

import dev.lampwright.upkeep.Backoff;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Trouble;
import java.io.IOException;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Leaves the last wills of many rigs at a broker. A connection can have only one last will (MQTT 3.1.1, section 3.1.2.5), and the broker must report the
 * loss of each rig on that rig's own topic, so each has a {@link WillConnection}. One thread, {@code wills}, keeps all of them alive. Another,
 * {@code wills connect}, makes the missing ones, one after the other, and ends when all are there: a broker or a name server that does not answer
 * must not keep the first thread from its pings. For any threads.
 */
final class Wills implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Wills.class);

    private final Broker broker;
    private final Patience patience;
    private final Turnstile turnstile;
    private final Set<Held> all = new LinkedHashSet<>();
    private Thread keeping;
    private Thread connecting;
    private final Bell toKeep = new Bell();
    private final Bell toConnect = new Bell();
    private boolean isClosed;

    /**
     * Keeps none yet.
     *
     * @param broker where the broker is and how to get in
     * @param patience how long to wait
     * @param turnstile when connections may be attempted
     */
    Wills(Broker broker, Patience patience, Turnstile turnstile) {
        this.broker = broker;
        this.patience = patience;
        this.turnstile = turnstile;
    }

    /** Learns what becomes of a will, call by call in the order in which it happens. It must not wait. */
    interface Watcher {
        /** The broker keeps it from now on. */
        void held();

        /** The broker does not keep it any more, and may have published it. */
        void lost();
    }

    /**
     * Begins to leave a will at the broker, for the rig that this thread works for.
     *
     * @param will the will
     * @param watcher learns what becomes of it
     * @return the will, until it is released
     */
    synchronized Held hold(Will will, Watcher watcher) {
        Held held = new Held(will, watcher);
        all.add(held);
        connectSoon();
        return held;
    }

    /** The main connection to the same broker has ended. Until each will's own connection has answered, it does not count as held. */
    void doubt() {
        known().forEach(Held::doubt);
        toKeep.ring();
    }

    private synchronized void connectSoon() {
        if (isClosed) {
            return;
        }
        if (connecting == null) {
            connecting = begin("wills connect", this::connect);
        }
        if (keeping == null) {
            keeping = begin("wills", this::keep);
        }
        toConnect.ring();
    }

    private static Thread begin(String name, Runnable work) {
        Thread begun = RigName.make("", () -> new Thread(work, name));
        begun.setDaemon(true);
        begun.start();
        return begun;
    }

    private void connect() {
        try {
            for (List<Held> missing = missing(); !missing.isEmpty(); missing = missing()) {
                long wait = Long.MAX_VALUE;
                for (Held held : missing) {
                    wait = Math.min(wait, held.connectIfDue());
                }
                toConnect.await(Duration.ofNanos(wait));
            }
        } catch (InterruptedException e) {
            LOG.debug("interrupted, which closing does");
        }
    }

    /** Those to connect. If there are none, the calling thread has to end. */
    private synchronized List<Held> missing() {
        List<Held> missing = all.stream().filter(Held::isMissing).toList();
        if (missing.isEmpty()) {
            connecting = null;
        }
        return missing;
    }

    private void keep() {
        try {
            while (true) {
                toKeep.await(patience.keepAlive().dividedBy(2));
                List<Held> asked = known().stream().filter(Held::isThereToPing).toList();
                long end = System.nanoTime() + patience.answer().toNanos();
                asked.forEach(held -> held.awaitAnswer(Duration.ofNanos(end - System.nanoTime())));
            }
        } catch (InterruptedException e) {
            LOG.debug("interrupted, which closing does");
        }
    }

    private synchronized List<Held> known() {
        return List.copyOf(all);
    }

    private synchronized void remove(Held held) {
        all.remove(held);
        toConnect.ring();
    }

    /** Ends all connections, without a goodbye for wills that are still held. */
    @Override
    public synchronized void close() {
        isClosed = true;
        for (Thread thread : new Thread[] {keeping, connecting}) {
            if (thread != null) {
                thread.interrupt();
            }
        }
        List.copyOf(all).forEach(held -> held.release(false));
    }

    /** The will of one rig. */
    final class Held {
        private final Will will;
        private final Watcher watcher;
        private final String rig = RigName.current();
        private final String clientId = BrokerClient.randomId();
        private final Backoff backoff = new Backoff(patience.firstPause(), patience.longestPause(), Math::random);
        private final Trouble trouble = new Trouble(LOG);
        private volatile BrokerState state = new BrokerState(BrokerState.Phase.CONNECTING, "");
        private volatile WillConnection connection;
        private boolean isReleased;
        private long dueNanos = System.nanoTime();
        private long turnBefore;
        private BrokerException untold;
        private boolean isDoubted;

        private Held(Will will, Watcher watcher) {
            this.will = will;
            this.watcher = watcher;
        }

        /** Whether the broker keeps it, and if not, why. */
        BrokerState state() {
            return state;
        }

        private synchronized boolean isMissing() {
            return connection == null && !isReleased;
        }

        /** Connects if it is due; otherwise returns how long it is until then, in ns. */
        private long connectIfDue() throws InterruptedException {
            long left = dueNanos - System.nanoTime();
            if (left > 0) {
                return left;
            }
            long turn = turnstile.await();
            RigName.during(rig, () -> connect(turn));
            return 0;
        }

        private void connect(long turn) {
            if (untold != null && turn == turnBefore) {
                String words =
                        BrokerClient.where(broker) + ": " + untold.getMessage() + "; trying again until it works";
                trouble.begins(untold.getMessage(), words, System.nanoTime());
            }
            turnBefore = turn;
            try {
                BrokerSocket network = BrokerClient.socket(broker, patience);
                take(WillConnection.open(network, Login.of(broker), clientId, will, patience));
            } catch (BrokerException e) {
                missed(e);
            } catch (RuntimeException | Error e) {
                missed(BrokerWords.failure(e));
            }
        }

        private void take(WillConnection made) {
            synchronized (this) {
                if (isReleased) {
                    made.end();
                    return;
                }
                backoff.reset();
                untold = null;
                isDoubted = false;
                state = new BrokerState(BrokerState.Phase.CONNECTED, "");
                connection = made;
                watcher.held();
            }
            trouble.ends(BrokerClient.where(broker) + ": connected");
        }

        private void missed(BrokerException failure) {
            untold = failure;
            dueNanos = System.nanoTime() + backoff.next().toNanos();
            state = new BrokerState(BrokerState.Phase.LOST, failure.getMessage());
        }

        /** Pings if there is a connection, and returns whether an answer can come. */
        private boolean isThereToPing() {
            WillConnection now = connection;
            if (now == null) {
                return false;
            }
            try {
                now.ping();
                return true;
            } catch (IOException | RuntimeException e) {
                lost(now, e);
                return false;
            }
        }

        private void awaitAnswer(Duration most) {
            WillConnection now = connection;
            if (now != null) {
                try {
                    now.awaitAnswer(most);
                    trust(now);
                } catch (IOException | RuntimeException e) {
                    lost(now, e);
                }
            }
        }

        private synchronized void doubt() {
            if (connection != null) {
                isDoubted = true;
                watcher.lost();
            }
        }

        private synchronized void trust(WillConnection answered) {
            if (connection == answered && isDoubted) {
                isDoubted = false;
                watcher.held();
            }
        }

        private void lost(WillConnection lost, Exception failure) {
            synchronized (this) {
                if (isReleased || connection != lost) {
                    return;
                }
                missed(BrokerWords.failure(failure));
                watcher.lost();
                connection = null;
            }
            lost.abort();
            connectSoon();
        }

        /**
         * Ends its connection.
         *
         * @param isSaid whether the rig's goodbye has been published. The broker then forgets the will, and otherwise publishes it
         */
        void release(boolean isSaid) {
            WillConnection last;
            synchronized (this) {
                isReleased = true;
                last = connection;
                connection = null;
            }
            remove(this);
            state = new BrokerState(BrokerState.Phase.LOST, "closed");
            if (last != null && isSaid) {
                last.end();
            } else if (last != null) {
                last.abort();
            }
        }
    }
}
