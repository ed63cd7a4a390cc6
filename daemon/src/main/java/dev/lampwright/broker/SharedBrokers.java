package dev.lampwright.broker;

import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.RigName;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Ways to brokers for many daemons in one process. All that get into a broker in the same way share two connections, which are there for as long as any
 * of them is: over one they hear their printers, over the other they publish and are asked. Beside them the broker keeps a last will of each. For any
 * threads.
 */
public final class SharedBrokers implements Brokers {
    private final Map<Place, SharedConnection> connections = new HashMap<>();
    private final Patience patience;
    private final Hands hands;
    private final Supplier<Flood> floods;

    /** What a connection is for. */
    enum Purpose {
        /** What printers report. */
        PRINTERS,
        /** What daemons publish and are asked. */
        OWN
    }

    /** All with the same place share a connection. */
    record Place(Broker broker, Purpose purpose) {
        /** Who publishes too much there. */
        String floods() {
            return purpose == Purpose.PRINTERS
                    ? "the printer publishes"
                    : "somebody asks or publishes on this rig's topics";
        }
    }

    /**
     * Makes ways to brokers; none is connected yet.
     *
     * @param patience how long to wait for a broker
     * @param hands who reads messages
     */
    public SharedBrokers(Patience patience, Hands hands) {
        this(patience, hands, Flood::new);
    }

    SharedBrokers(Patience patience, Hands hands, Supplier<Flood> floods) {
        this.patience = patience;
        this.hands = hands;
        this.floods = floods;
    }

    /** Finds out for one listener whether too much comes. */
    Flood flood() {
        return floods.get();
    }

    @Override
    public Connection to(Broker broker, Wanted wanted, Optional<Will> will) {
        return new Member(this, broker, wanted, will, hands);
    }

    /** Returns the connection to publish over, which is started if necessary and stays until {@link #silence}. */
    synchronized SharedConnection speak(Broker broker, Outbox outbox) {
        SharedConnection connection = at(new Place(broker, Purpose.OWN));
        connection.speaks(outbox);
        return connection;
    }

    /** Ends what {@link #speak} began. */
    void silence(Broker broker, SharedConnection connection, Outbox outbox) {
        endIfUnused(new Place(broker, Purpose.OWN), connection, () -> connection.silence(outbox));
    }

    /** Adds a listener to the connection at its place, which is started if necessary. */
    synchronized void join(Place place, Subscriber listener) {
        SharedConnection connection = at(place);
        listener.joins(connection);
        connection.join(listener);
    }

    private SharedConnection at(Place place) {
        SharedConnection connection = connections.get(place);
        if (connection == null || !connection.isAlive()) {
            connection = begun(place, "");
            connections.put(place, connection);
        }
        return connection;
    }

    /** A connection for one listener, which others need not share any more. It is started, and has no listener yet. */
    SharedConnection apart(Place place, String rig) {
        return begun(place, rig);
    }

    /** The one that publishes reports problems with the broker; the others do so only if it has none. */
    private SharedConnection begun(Place place, String rig) {
        Optional<Gate> gate = place.purpose() == Purpose.OWN && rig.isEmpty()
                ? Optional.empty()
                : Optional.of(new Beside(place.broker()));
        SharedConnection begun = RigName.make(rig, () -> new SharedConnection(place.broker(), patience, gate));
        begun.start();
        return begun;
    }

    private synchronized Optional<SharedConnection> main(Broker broker) {
        return Optional.ofNullable(connections.get(new Place(broker, Purpose.OWN)));
    }

    /** Takes a listener out again. */
    void leave(Place place, SharedConnection connection, Subscriber listener) {
        endIfUnused(place, connection, () -> connection.leave(listener));
    }

    /** With the last one the connection ends soon, without anybody waiting for it: it has nothing to say. */
    private void endIfUnused(Place place, SharedConnection connection, Runnable leave) {
        boolean isLast;
        synchronized (this) {
            leave.run();
            isLast = connection.isUnused();
            if (isLast) {
                connections.remove(place, connection);
            }
        }
        if (isLast) {
            Thread end = new Thread(connection::close, "printer end");
            end.setDaemon(true);
            end.start();
        }
    }

    /** Looks at the main connection to a broker. For one thread. */
    private final class Beside implements Gate {
        private final Broker broker;
        private long before;

        Beside(Broker broker) {
            this.broker = broker;
        }

        @Override
        public boolean look() {
            long now = main(broker)
                    .map(SharedConnection::turnstile)
                    .map(Turnstile::glance)
                    .orElse(0L);
            boolean isSame = now != 0 && now == before;
            before = now;
            return isSame;
        }
    }
}
