package dev.lampwright.printer;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerClient;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.KeptMessages;
import dev.lampwright.broker.Patience;
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

    private final Bindings bindings;
    private final StatusReader reader;
    private final LongSupplier nanoClock;
    private final Consumer<PrinterStatus> sink;
    private final Optional<Contact> contact;
    private final BrokerClient client;
    private final FirstMinute firstMinute = new FirstMinute();
    private final KeptMessages kept = new KeptMessages();
    private final Trouble silences = new Trouble(LOG);
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

    PrinterClient(
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
                broker, topicFilters(bindings, contact), this::take, contact.map(Contact::will), patience);
    }

    private static List<String> topicFilters(Bindings bindings, Optional<Contact> contact) {
        List<String> all = new ArrayList<>(bindings.topicFilters());
        contact.ifPresent(spoken -> all.add(spoken.topics().asks()));
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

    private void take(String topic, byte[] payload, boolean retained) {
        if (contact.isPresent() && contact.get().topics().own(topic)) {
            contact.get().take(topic, payload, retained, client);
            return;
        }
        if (retained && kept.isHeard(topic, payload)) {
            return;
        }
        PrinterStatus before = retained ? status : status.back();
        PrinterStatus after = reader.read(before, topic, payload, nanoClock.getAsLong());
        if (after != before) {
            kept.note(topic, payload);
            FaultWords.line(status, after).ifPresent(LOG::warn);
            status = after;
            sink.accept(after);
        }
    }
}
