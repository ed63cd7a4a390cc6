package dev.lampwright.printer;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Connection;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.HeardMessage;
import dev.lampwright.broker.Patience;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Follows printers: stays connected to their broker and turns what they publish into the status of each. */
public final class PrinterClient implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(PrinterClient.class);

    private final List<HeardStatus> printers = new ArrayList<>();
    private final LongSupplier nanoClock;
    private final BiConsumer<String, PrinterStatus> sink;
    private final Optional<Contact> contact;
    private final Connection connection;
    private final FirstMinute firstMinute = new FirstMinute();

    /**
     * Prepares; {@link #start} starts.
     *
     * @param broker where the broker is and how to log in
     * @param bindings where each printer reports what, by name; at least one binding
     * @param nanoClock the daemon's monotonic clock, in ns
     * @param sink receives the name of a printer and its new status. Called by one thread at a time; the next message waits until it
     *     returns
     * @param contact how others reach the daemon
     * @param brokers gives the connection to the broker
     * @throws IllegalArgumentException if a topic filter is malformed; the message says how
     */
    public PrinterClient(
            Broker broker,
            Map<String, Bindings> bindings,
            LongSupplier nanoClock,
            BiConsumer<String, PrinterStatus> sink,
            Contact contact,
            Brokers brokers) {
        this(broker, bindings, nanoClock, sink, Optional.of(contact), brokers);
    }

    /** For a printer without a name, and without asks. */
    PrinterClient(
            Broker broker, Bindings bindings, LongSupplier nanoClock, Consumer<PrinterStatus> sink, Patience patience) {
        this(
                broker,
                Map.of(Statuses.UNNAMED, bindings),
                nanoClock,
                (name, status) -> sink.accept(status),
                Optional.empty(),
                Brokers.eachItsOwn(patience));
    }

    private PrinterClient(
            Broker broker,
            Map<String, Bindings> bindings,
            LongSupplier nanoClock,
            BiConsumer<String, PrinterStatus> sink,
            Optional<Contact> contact,
            Brokers brokers) {
        this.contact = contact;
        this.nanoClock = nanoClock;
        this.sink = sink;
        long now = nanoClock.getAsLong();
        bindings.forEach((name, places) -> printers.add(new HeardStatus(name, places, LOG, now)));
        this.connection = brokers.to(broker, wanted(bindings, contact), contact.map(Contact::will));
    }

    private Brokers.Wanted wanted(Map<String, Bindings> bindings, Optional<Contact> contact) {
        SortedSet<String> all = new TreeSet<>();
        bindings.values().forEach(places -> all.addAll(places.topicFilters()));
        List<String> own = contact.map(Contact::topics)
                .map(topics -> List.of(topics.asks(), topics.status()))
                .orElse(List.of());
        return new Brokers.Wanted(own, List.copyOf(all), this::route);
    }

    /** Starts connecting, and returns at once. Call it once. */
    public void start() {
        connection.start();
    }

    /**
     * Whether the connection is being maintained.
     *
     * @return false before {@link #start} and after {@link #close}
     */
    public boolean isAlive() {
        return connection.isAlive();
    }

    /**
     * Continues from what another client knew, as far as it was reported in the same places. Call this before {@link #start}.
     *
     * @param before the previous client of the same broker, closed
     */
    public void goOnFrom(PrinterClient before) {
        for (HeardStatus printer : printers) {
            before.named(printer.name()).ifPresent(printer::goOnFrom);
            sink.accept(printer.name(), printer.status());
        }
    }

    /** Ends the connection. Takes 1.5 s at most, whatever the broker does. */
    @Override
    public void close() {
        connection.close();
    }

    /**
     * The state of the connection to the broker.
     *
     * @return the newest
     */
    public BrokerState brokerState() {
        return connection.state();
    }

    /**
     * Publishes the daemon's status soon, retained, for those who subscribe later. Has no effect if the daemon has no topics.
     *
     * @param status a message; only the newest counts
     */
    public void tell(String status) {
        contact.ifPresent(
                spoken -> connection.publish(spoken.topics().status(), status.getBytes(StandardCharsets.UTF_8), true));
    }

    /**
     * How many messages have come.
     *
     * @return a count since the start
     */
    public long messages() {
        return connection.messages();
    }

    /**
     * Whether and why a printer is silent.
     *
     * @param printer its name
     * @param silentAfter how long it may be quiet before that
     * @return empty if it is not silent
     */
    public Optional<Silence> silence(String printer, Duration silentAfter) {
        return named(printer).flatMap(one -> one.silence(brokerState(), silentAfter, nanoClock.getAsLong()));
    }

    private Optional<HeardStatus> named(String name) {
        return printers.stream().filter(printer -> printer.name().equals(name)).findFirst();
    }

    /**
     * Checks what no message shows: topics without messages, and silence. Call about once a second, from any thread.
     *
     * @param silentAfter how long a printer may be quiet before it counts as silent, by its name
     */
    public synchronized void lookAround(Function<String, Duration> silentAfter) {
        long now = nanoClock.getAsLong();
        printers.forEach(printer -> printer.tellSilence(brokerState(), silentAfter.apply(printer.name()), now));
        boolean connected = brokerState().phase() == BrokerState.Phase.CONNECTED;
        if (firstMinute.over(connected, now)) {
            printers.forEach(HeardStatus::tellQuietTopics);
        }
    }

    /**
     * Passes a message on to the daemon's desk, or to the status of a printer.
     *
     * @param message the message; a retained one does not show that the printer is online
     */
    void route(HeardMessage message) {
        if (contact.isPresent() && contact.get().topics().own(message.topic())) {
            contact.get().take(message.topic(), message.payload(), message.isRetained(), connection);
        } else {
            for (HeardStatus printer : printers) {
                printer.read(message, nanoClock.getAsLong()).ifPresent(status -> sink.accept(printer.name(), status));
            }
        }
    }

    /** Whether a connection has lasted for its first minute, in which a printer would have reported something. For one thread at a time. */
    static final class FirstMinute {
        private static final long MINUTE_NANOS = 60_000_000_000L;

        private boolean counting;
        private long sinceNanos;

        /**
         * Checks the connection.
         *
         * @param connected whether there is one
         * @param nanos the monotonic time, in ns
         * @return whether it has been up at every check for a minute or more
         */
        boolean over(boolean connected, long nanos) {
            if (connected && !counting) {
                sinceNanos = nanos;
            }
            counting = connected;
            return connected && nanos - sinceNanos >= MINUTE_NANOS;
        }
    }
}
