package dev.lampwright.printer;

import java.util.ArrayList;
import java.util.List;

/**
 * Reads messages into the printer's status. It keeps no status of its own; what it keeps is which troubles the log has been told.
 * No message makes it throw. For one thread at a time.
 */
public final class StatusReader {
    private final List<Bound> bounds = new ArrayList<>();
    private final boolean stateIsTold;

    /**
     * Prepares the bindings.
     *
     * @param bindings where the printer says what
     * @throws IllegalArgumentException if a topic filter is malformed; the message says how
     */
    public StatusReader(Bindings bindings) {
        this.stateIsTold = bindings.state().isPresent();
        bindings.state().ifPresent(state -> bounds.add(bound(state)));
        bindings.readings().forEach((quantity, binding) -> bounds.add(bound(quantity, binding)));
        bindings.events().forEach((name, binding) -> bounds.add(bound(name, binding)));
    }

    private static Bound bound(StateBinding binding) {
        return new Bound("state", binding.topicFilter(), binding.path(), new StateTaker(binding.words()));
    }

    private static Bound bound(Quantity quantity, Binding binding) {
        Taker taker = new ReadingTaker(quantity, binding.scale(), binding.offset());
        return new Bound(quantity.key(), binding.topicFilter(), binding.path(), taker);
    }

    private static Bound bound(String event, EventBinding binding) {
        return new Bound("event " + event, binding.topicFilter(), binding.path(), new EventTaker(event, binding));
    }

    /**
     * Takes in one message.
     *
     * @param before the status up to now
     * @param topic the message's topic
     * @param payload the message's payload; not kept, not changed
     * @param atNanos when it came, on the daemon's monotonic clock, in ns
     * @return the new status; the very same object if the message says nothing that is bound and readable
     */
    public PrinterStatus read(PrinterStatus before, String topic, byte[] payload, long atNanos) {
        Payload opened = new Payload(payload);
        PrinterStatus after = before;
        for (Bound bound : bounds) {
            if (bound.wants(topic)) {
                after = bound.read(after, topic, opened, atNanos);
            }
        }
        return stateIsTold || after == before ? after : after.withState(StateGuess.of(after), atNanos);
    }
}
