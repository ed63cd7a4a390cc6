package dev.lampwright.printer;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/** Follows a printer: keeps connected to its broker and turns what it publishes into its status. */
public final class PrinterClient implements AutoCloseable {
    private final StatusReader reader;
    private final LongSupplier nanoClock;
    private final Consumer<PrinterStatus> sink;
    private final BrokerClient client;
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
        this.client = new BrokerClient(broker, bindings.topicFilters(), this::take, Optional.empty(), patience);
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

    private void take(String topic, byte[] payload, boolean retained) {
        PrinterStatus after = reader.read(status, topic, payload, nanoClock.getAsLong());
        if (after != status) {
            status = after;
            sink.accept(after);
        }
    }
}
