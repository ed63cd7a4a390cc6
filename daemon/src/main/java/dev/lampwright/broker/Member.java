package dev.lampwright.broker;

import dev.lampwright.upkeep.Hands;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One rig's part in the connections to a broker. It hears its printers over one shared connection. It is asked and publishes over another, so that no flood
 * of messages delays what people ask for. The broker keeps its last will apart from both ({@link Wills}). It publishes only while its will is held:
 * what the broker keeps of a rig must never outlive the rig.
 */
final class Member implements Connection {
    private static final Duration FAREWELL = Duration.ofMillis(500);

    private final SharedBrokers brokers;
    private final Broker broker;
    private final Subscriber printers;
    private final Subscriber asked;
    private final Optional<Will> will;
    private final Outbox outbox = new Outbox();
    private volatile Optional<SharedConnection> speaking = Optional.empty();
    private volatile Optional<Wills.Held> held = Optional.empty();

    /**
     * Prepares; {@link #start} starts.
     *
     * @param brokers where to join
     * @param broker where the broker is and how to get in
     * @param wanted what to subscribe to
     * @param will what is to be published when we are gone
     * @param hands who reads messages
     */
    Member(SharedBrokers brokers, Broker broker, Brokers.Wanted wanted, Optional<Will> will, Hands hands) {
        this.brokers = brokers;
        this.broker = broker;
        this.will = will;
        List<TopicFilter> own = wanted.own().stream().map(TopicFilter::of).toList();
        printers = new Subscriber(
                brokers,
                new SharedBrokers.Place(broker, SharedBrokers.Purpose.PRINTERS),
                wanted.printers(),
                topic -> own.stream().anyMatch(filter -> filter.matches(topic)),
                wanted.sink(),
                hands);
        asked = new Subscriber(
                brokers,
                new SharedBrokers.Place(broker, SharedBrokers.Purpose.OWN),
                wanted.own(),
                topic -> false,
                wanted.sink(),
                hands);
    }

    @Override
    public void start() {
        SharedConnection connection = brokers.speak(broker, outbox);
        speaking = Optional.of(connection);
        asked.start();
        printers.start();
        held = will.map(last -> connection.wills().hold(last, new Wills.Watcher() {
            @Override
            public void held() {
                connection.rounds().add(outbox);
            }

            @Override
            public void lost() {
                connection.rounds().remove(outbox);
            }
        }));
        if (will.isEmpty()) {
            connection.rounds().add(outbox);
        }
    }

    @Override
    public boolean isAlive() {
        return printers.isAlive()
                && asked.isAlive()
                && speaking.filter(SharedConnection::isAlive).isPresent();
    }

    @Override
    public void publish(String topic, byte[] payload, boolean retained) {
        put(new Outgoing(topic, payload, retained));
    }

    private void put(Outgoing message) {
        outbox.put(message);
        speaking.ifPresent(connection -> connection.rounds().bell().ring());
    }

    @Override
    public BrokerState state() {
        BrokerState hearing = printers.state();
        if (hearing.phase() != BrokerState.Phase.CONNECTED) {
            return hearing;
        }
        BrokerState speech = speaking.map(SharedConnection::state).orElse(hearing);
        return speech.phase() == BrokerState.Phase.CONNECTED
                ? held.map(Wills.Held::state).orElse(speech)
                : speech;
    }

    @Override
    public long messages() {
        return printers.messages() + asked.messages();
    }

    @Override
    public void close() {
        Optional<Outgoing> goodbye =
                will.map(last -> new Outgoing(last.topic(), last.goodbye().getBytes(StandardCharsets.UTF_8), true));
        goodbye.ifPresent(this::put);
        outbox.shut();
        boolean isSaid =
                isUp() && goodbye.map(last -> last.awaitWritten(FAREWELL)).orElse(true);
        held.ifPresent(kept -> kept.release(isSaid));
        asked.close();
        printers.close();
        speaking.ifPresent(connection -> brokers.silence(broker, connection, outbox));
    }

    private boolean isUp() {
        return speaking.map(SharedConnection::state)
                .filter(state -> state.phase() == BrokerState.Phase.CONNECTED)
                .isPresent();
    }
}
