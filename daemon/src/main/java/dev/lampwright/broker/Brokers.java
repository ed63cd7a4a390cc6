package dev.lampwright.broker;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** How daemons get to their brokers: each with a connection of its own, or together with others. */
@FunctionalInterface
public interface Brokers {
    /**
     * Prepares a way to a broker; {@link Connection#start} starts.
     *
     * @param broker where the broker is and how to get in
     * @param wanted what to subscribe to
     * @param will what is to be published when we are gone; empty if nothing is to be published
     * @return a connection, which may be shared with others
     */
    Connection to(Broker broker, Wanted wanted, Optional<Will> will);

    /**
     * What a daemon subscribes to, all well-formed topic filters.
     *
     * @param own its own topics, which nobody else wants
     * @param printers what others may want as well
     * @param sink where messages go. Those of its own topics come from one thread, those of the others from one thread, which may be another
     */
    record Wanted(List<String> own, List<String> printers, Consumer<HeardMessage> sink) {
        /** Keeps copies of the lists. */
        public Wanted {
            own = List.copyOf(own);
            printers = List.copyOf(printers);
        }

        void hear(String topic, byte[] payload, boolean retained) {
            sink.accept(new HeardMessage(topic, payload, retained));
        }
    }

    /**
     * Each has a connection of its own, and no more.
     *
     * @param patience how long to wait for a broker
     * @return ways to brokers
     */
    static Brokers eachItsOwn(Patience patience) {
        return (broker, wanted, will) -> new BrokerClient(
                broker,
                Stream.concat(wanted.printers().stream(), wanted.own().stream()).toList(),
                wanted::hear,
                will,
                patience);
    }
}
