package dev.lampwright.broker;

import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.RigName;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Ways to brokers for many daemons in one process. All that get into a broker in the same way hear their printers over one connection, which
 * is there for as long as any of them is. Beside it each has a thin connection, over which it publishes and is asked, since a connection has one last will
 * only (MQTT 3.1.1, section 3.1.2.5), and the broker is to tell the loss of each of them on its own topic. For any threads.
 */
public final class SharedBrokers implements Brokers {
    private final Map<Broker, SharedConnection> connections = new HashMap<>();
    private final Patience patience;
    private final Hands hands;
    private final Supplier<Flood> floods;

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

    /** Tells for one member whether too much comes. */
    Flood flood() {
        return floods.get();
    }

    @Override
    public Connection to(Broker broker, Wanted wanted, Optional<Will> will) {
        return new Member(this, broker, wanted, will, patience, hands);
    }

    /** Adds a member to the connection to its broker, which is begun if need be. */
    synchronized void join(Broker broker, Member member) {
        SharedConnection connection = connections.get(broker);
        if (connection == null || !connection.isAlive()) {
            connection = begun(broker, "");
            connections.put(broker, connection);
        }
        member.joins(connection);
        connection.join(member);
    }

    /** A connection for one member, which other members need not share any more. It is started, and has no member yet. */
    SharedConnection apart(Broker broker, String rig) {
        return begun(broker, rig);
    }

    private SharedConnection begun(Broker broker, String rig) {
        SharedConnection[] begun = new SharedConnection[1];
        RigName.during(rig, () -> {
            begun[0] = new SharedConnection(broker, patience);
            begun[0].start();
        });
        return begun[0];
    }

    /** Takes a member out again. With the last one the connection ends soon, without anybody waiting for it: it has no will and nothing to say. */
    void leave(Broker broker, SharedConnection connection, Member member) {
        boolean isLast;
        synchronized (this) {
            isLast = connection.leave(member);
            if (isLast) {
                connections.remove(broker, connection);
            }
        }
        if (isLast) {
            Thread end = new Thread(connection::close, "printer end");
            end.setDaemon(true);
            end.start();
        }
    }
}
