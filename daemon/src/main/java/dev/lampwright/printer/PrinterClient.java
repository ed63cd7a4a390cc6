package dev.lampwright.printer;

import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Follows a printer: keeps connected to its broker and turns what it publishes into its status. */
public final class PrinterClient implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(PrinterClient.class);

    private final StatusReader reader;
    private final LongSupplier nanoClock;
    private final Consumer<PrinterStatus> sink;
    private final BrokerClient client;
    private final FirstMinute firstMinute = new FirstMinute();
    private PrinterStatus status = PrinterStatus.nothingHeard();

    /**
     * Prepares; {@link #start} starts.
     *
     * @param broker where the broker is and how to get in
     * @param bindings where the printer says what; at least one binding
     * @param nanoClock the daemon's monotonic clock, in ns
     * @param sink takes each new status. It is called by one thread at a time, and holds up the next message until it returns
     * @throws IllegalArgumentException if a topic filter is malformed; the message says how
     */
    public PrinterClient(Broker broker, Bindings bindings, LongSupplier nanoClock, Consumer<PrinterStatus> sink) {
        this(broker, bindings, nanoClock, sink, Patience.USUAL);
    }

    PrinterClient(
            Broker broker, Bindings bindings, LongSupplier nanoClock, Consumer<PrinterStatus> sink, Patience patience) {
        this.reader = new StatusReader(bindings);
        this.nanoClock = nanoClock;
        this.sink = sink;
        this.client = new BrokerClient(broker, bindings.topicFilters(), this::take, patience);
    }

    /** Starts to connect, and returns at once. To be called once. */
    public void start() {
        client.start();
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
     * How many messages have come.
     *
     * @return a count since the start
     */
    public long messages() {
        return client.messages();
    }

    /** Looks after what no message tells: topics on which nothing comes. To be called every second or so, by any thread. */
    public synchronized void lookAround() {
        boolean connected = brokerState().phase() == BrokerState.Phase.CONNECTED;
        if (firstMinute.over(connected, nanoClock.getAsLong())) {
            reader.tellQuietTopics();
        }
    }

    private void take(String topic, byte[] payload, boolean retained) {
        PrinterStatus after = reader.read(status, topic, payload, nanoClock.getAsLong());
        if (after != status) {
            FaultWords.line(status, after).ifPresent(LOG::warn);
            status = after;
            sink.accept(after);
        }
    }
}
