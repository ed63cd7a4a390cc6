package dev.lampwright.printer;

import dev.lampwright.broker.TopicFilter;
import dev.lampwright.payload.Payload;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.Value;
import dev.lampwright.upkeep.Printable;
import dev.lampwright.upkeep.Trouble;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** An active binding: which messages it reads, where in them, and what the value does to the status. */
final class ActiveBinding {
    private static final Logger LOG = LoggerFactory.getLogger(StatusReader.class);
    private static final int MISSES_BEFORE_TELLING = 20;

    private final String name;
    private final TopicFilter filter;
    private final Source source;
    private final Effect effect;
    private final Trouble trouble = new Trouble(LOG);
    private boolean found;
    private int misses;
    private volatile boolean topicHeard;
    private boolean quietTold;

    /**
     * Activates a binding.
     *
     * @param name what to call it in the log
     * @param source where the value is reported
     * @param effect what it does to the status
     * @throws IllegalArgumentException if the topic filter is malformed; the message says how
     */
    ActiveBinding(String name, Source source, Effect effect) {
        this.name = name;
        this.filter = TopicFilter.of(source.topicFilter());
        this.source = source;
        this.effect = effect;
    }

    boolean wants(String topic) {
        boolean wanted = filter.matches(topic);
        topicHeard |= wanted;
        return wanted;
    }

    /**
     * Logs, once, that no message has come on the topic, unless one has. Callable from another thread than the rest, by one thread at a
     * time.
     */
    void tellIfQuiet() {
        if (!topicHeard && !quietTold) {
            quietTold = true;
            LOG.warn(
                    "{}: nothing has arrived on {} yet; check the topic, and whether the printer publishes there",
                    name,
                    Printable.beginning(filter.toString(), 100));
        }
    }

    /**
     * Applies the value in a matching message.
     *
     * @param before the status up to now
     * @param topic the message's topic
     * @param payload what the message carries
     * @param atNanos when it came
     * @return the new status; the old one if the value is missing or unreadable
     */
    PrinterStatus apply(PrinterStatus before, String topic, Payload payload, long atNanos) {
        try {
            Optional<Value> value = payload.at(source);
            if (value.isEmpty()) {
                missed(topic, payload);
                return before;
            }
            PrinterStatus after = effect.apply(before, value.get(), atNanos);
            found = true;
            trouble.ends(name + ": messages can be read again");
            return after;
        } catch (UnreadableException e) {
            trouble.begins(e.getMessage(), complaint(e, topic, payload), atNanos);
            return before;
        }
    }

    private String complaint(UnreadableException e, String topic, Payload payload) {
        return "%s: %s, at %s in a message on %s that begins \"%s\"; the last value stays, and the binding should be checked"
                .formatted(name, e.getMessage(), source.place(), Printable.beginning(topic, 100), payload.beginning());
    }

    private void missed(String topic, Payload payload) {
        if (!found && ++misses == MISSES_BEFORE_TELLING) {
            LOG.warn(
                    "{}: {} messages have arrived on {}, and none had anything at {}; the last begins \"{}\"; check the binding",
                    name,
                    misses,
                    Printable.beginning(topic, 100),
                    source.place(),
                    payload.beginning());
        }
    }
}
