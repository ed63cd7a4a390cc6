package dev.lampwright.printer;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerClient;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.KeptMessages;
import dev.lampwright.broker.Patience;
import dev.lampwright.upkeep.LineBudget;
import dev.lampwright.upkeep.Trouble;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Follows a printer: keeps connected to its broker and turns what it publishes into its status. */
public final class PrinterClient implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(PrinterClient.class);
    private static final int MOST_FAULT_LINES = 10;

    private final Bindings bindings;
    private final StatusReader reader;
    private final LongSupplier nanoClock;
    private final Consumer<PrinterStatus> sink;
    private final Optional<Contact> contact;
    private final BrokerClient client;
    private final FirstMinute firstMinute = new FirstMinute();
    private final KeptMessages kept = new KeptMessages();
    private final Trouble silences = new Trouble(LOG);
    private final LineBudget faults = new LineBudget(LOG, MOST_FAULT_LINES, "faults of the printer");
    private final long madeAtNanos;
    private volatile PrinterStatus status = PrinterStatus.nothingHeard();

    /**
     * Prepares; {@link #start} starts.
     *
     * @param broker where the broker is and how to get in
     * @param bindings where the printer says what; at least one binding
     * @param nanoClock the daemon's monotonic clock, in ns
     * @param sink takes each new status. It is called by one thread at a time, and holds up the next message until it returns
     * @param contact how the daemon is spoken to
     * @throws IllegalArgumentException if a topic filter is malformed; the message says how
     */
    public PrinterClient(
            Broker broker, Bindings bindings, LongSupplier nanoClock, Consumer<PrinterStatus> sink, Contact contact) {
        this(broker, bindings, nanoClock, sink, Optional.of(contact), Patience.USUAL);
    }

    /** One that is not spoken to. */
    PrinterClient(
            Broker broker, Bindings bindings, LongSupplier nanoClock, Consumer<PrinterStatus> sink, Patience patience) {
        this(broker, bindings, nanoClock, sink, Optional.empty(), patience);
    }

    private PrinterClient(
            Broker broker,
            Bindings bindings,
            LongSupplier nanoClock,
            Consumer<PrinterStatus> sink,
            Optional<Contact> contact,
            Patience patience) {
        this.contact = contact;
        this.bindings = bindings;
        this.reader = new StatusReader(bindings);
        this.nanoClock = nanoClock;
        this.sink = sink;
        this.madeAtNanos = nanoClock.getAsLong();
        this.client = new BrokerClient(
                broker, topicFilters(bindings, contact), this::route, contact.map(Contact::will), patience);
    }

    private static List<String> topicFilters(Bindings bindings, Optional<Contact> contact) {
        List<String> all = new ArrayList<>(bindings.topicFilters());
        contact.map(Contact::topics).ifPresent(own -> all.addAll(List.of(own.asks(), own.status())));
        return all;
    }

    /** Starts to connect, and returns at once. To be called once. */
    public void start() {
        client.start();
    }

    /**
     * Whether the connection is looked after.
     *
     * @return false before {@link #start} and after {@link #close}
     */
    public boolean isAlive() {
        return client.isAlive();
    }

    /**
     * Goes on from what another client knew, as far as it was told in the same places. To be called before {@link #start}.
     *
     * @param before the client up to now, closed, of the same broker
     */
    public void goOnFrom(PrinterClient before) {
        status = before.status.kept(before.bindings, bindings);
        sink.accept(status);
    }

    /** Ends the connection. It takes 1.5 s at most, whatever the broker does. */
    @Override
    public void close() {
        client.close();
    }

    /**
     * How things stand with the broker.
     *
     * @return the newest
     */
    public BrokerState brokerState() {
        return client.state();
    }

    /**
     * Tells how the daemon does, soon; the broker keeps it for those who ask later. Of no effect if the daemon is not spoken to.
     *
     * @param status a message; only the newest counts
     */
    public void tell(String status) {
        contact.ifPresent(
                spoken -> client.publish(spoken.topics().status(), status.getBytes(StandardCharsets.UTF_8), true));
    }

    /**
     * How many messages have come.
     *
     * @return a count since the start
     */
    public long messages() {
        return client.messages();
    }

    /**
     * Whether and why nothing is heard of the printer.
     *
     * @param silentAfter how long nothing may be heard
     * @return empty if it is heard
     */
    public Optional<Silence> silence(Duration silentAfter) {
        return Silence.of(status, brokerState(), quietNanos(), silentAfter.toNanos());
    }

    private long quietNanos() {
        PrinterStatus newest = status;
        return nanoClock.getAsLong() - (newest.heard() ? newest.heardAtNanos() : madeAtNanos);
    }

    /**
     * Looks after what no message tells: topics on which nothing comes, and silence. To be called every second or so, by any thread.
     *
     * @param silentAfter how long nothing may be heard
     */
    public synchronized void lookAround(Duration silentAfter) {
        Optional<Silence> silence = silence(silentAfter);
        if (silence.isEmpty()) {
            silences.ends("printer: heard again");
        } else {
            long quietSeconds = Duration.ofNanos(quietNanos()).toSeconds();
            String line = "printer: " + silence.get().words(quietSeconds);
            silences.begins(silence.get().name(), line, nanoClock.getAsLong());
        }
        boolean connected = brokerState().phase() == BrokerState.Phase.CONNECTED;
        if (firstMinute.over(connected, nanoClock.getAsLong())) {
            reader.tellQuietTopics();
        }
    }

    /**
     * Brings a message to whom it is for: the daemon's desk, or the printer's status.
     *
     * @param topic its topic
     * @param payload its payload
     * @param retained whether the broker had kept it. Then it is no sign that the printer is there
     */
    void route(String topic, byte[] payload, boolean retained) {
        if (contact.isPresent() && contact.get().topics().own(topic)) {
            contact.get().take(topic, payload, retained, client);
        } else if (!retained || !kept.isHeard(topic, payload)) {
            read(topic, payload, retained);
        }
    }

    private void read(String topic, byte[] payload, boolean retained) {
        PrinterStatus before = retained ? status : status.back();
        PrinterStatus after = reader.read(before, topic, payload, nanoClock.getAsLong());
        if (after != before) {
            kept.note(topic, payload);
            faultLine(status, after).ifPresent(line -> faults.warn(line, nanoClock.getAsLong()));
            status = after;
            sink.accept(after);
        }
    }

    /**
     * What to log of a fault: one line when it begins, and one more for each new text that the printer has for it.
     *
     * @param before the status up to a message
     * @param after the status with the message in it
     * @return a line; empty if there is nothing new
     */
    static Optional<String> faultLine(PrinterStatus before, PrinterStatus after) {
        boolean begins = before.state() != PrinterState.FAULT;
        boolean news = !after.faultText().equals(before.faultText());
        if (after.state() != PrinterState.FAULT || !(begins || news)) {
            return Optional.empty();
        }
        return after.faultText()
                .map(text -> "the printer reports a fault: " + text)
                .or(() -> begins ? Optional.of("the printer reports a fault") : Optional.empty());
    }

    /** Whether a connection has lasted for its first minute, in which a printer would have spoken. For one thread at a time. */
    static final class FirstMinute {
        private static final long MINUTE_NANOS = 60_000_000_000L;

        private boolean counting;
        private long sinceNanos;

        /**
         * Looks at the connection.
         *
         * @param connected whether there is one
         * @param nanos the monotonic time, in ns
         * @return whether it has lasted, from one look to the next, for a minute or more
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
