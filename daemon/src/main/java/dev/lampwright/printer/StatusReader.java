package dev.lampwright.printer;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Payload;
import dev.lampwright.payload.Quantity;
import java.util.ArrayList;
import java.util.List;

/**
 * Turns messages into the printer's status. Its only state is which problems have been logged. No message makes it throw. For one thread at
 * a time.
 */
public final class StatusReader {
    private final List<ActiveBinding> bounds = new ArrayList<>();
    private final DerivedReadings derived;
    private final Conditions conditions;
    private final StateJudge judge;

    /**
     * Prepares the bindings.
     *
     * @param bindings where the printer reports what
     * @throws IllegalArgumentException if a topic filter is malformed; the message says how
     */
    public StatusReader(Bindings bindings) {
        derived = new DerivedReadings(bindings);
        conditions = new Conditions(bindings.conditions(), bindings.faultText().isEmpty());
        judge = new StateJudge(bindings, conditions);
        boolean saysNoMore = bindings.faultText().isEmpty();
        bindings.states().forEach(state -> bounds.add(bound(state, saysNoMore)));
        bindings.readings()
                .forEach((quantity, several) -> several.forEach(binding -> bounds.add(bound(quantity, binding))));
        bindings.own().forEach((quantity, several) -> several.forEach(binding -> bounds.add(bound(quantity, binding))));
        bindings.events().forEach((name, binding) -> bounds.add(bound(name, binding)));
        bindings.will()
                .ifPresent(
                        will -> bounds.add(new ActiveBinding("will", will.source(), new Effect.OfWill(will.gone()))));
        bindings.signs().forEach(place -> bounds.add(new ActiveBinding("condition", place, new Effect.OfSign(place))));
        bindings.faultText()
                .ifPresent(source -> bounds.add(new ActiveBinding("fault text", source, new Effect.OfFaultText())));
    }

    private static ActiveBinding bound(Bindings.OfState binding, boolean saysNoMore) {
        return new ActiveBinding("state", binding.source(), new Effect.OfState(binding.words(), saysNoMore));
    }

    private static ActiveBinding bound(Quantity quantity, Bindings.OfReading binding) {
        return new ActiveBinding(quantity.key(), binding.source(), new Effect.OfReading(quantity, binding));
    }

    private static ActiveBinding bound(OwnQuantity quantity, Bindings.OfReading binding) {
        Effect effect = quantity.like()
                .<Effect>map(like -> new Effect.OfOwnHeater(quantity.key(), like, binding))
                .orElseGet(() -> new Effect.OfOwnReading(quantity, binding));
        return new ActiveBinding(quantity.key(), binding.source(), effect);
    }

    private static ActiveBinding bound(String event, Bindings.OfEvent binding) {
        return new ActiveBinding("event " + event, binding.source(), new Effect.OfEvent(event, binding));
    }

    /**
     * Takes in one message.
     *
     * @param before the status up to now
     * @param topic the message's topic
     * @param payload the message's payload; neither kept nor modified
     * @param atNanos when it came, on the daemon's monotonic clock, in ns
     * @return the new status; the very same object if the message says nothing that is bound and readable
     */
    public PrinterStatus read(PrinterStatus before, String topic, byte[] payload, long atNanos) {
        return read(before, topic, new Payload(payload), atNanos);
    }

    /**
     * Takes in one message that others may read too.
     *
     * @param before the status up to now
     * @param topic the message's topic
     * @param payload what it carries
     * @param atNanos when it came, on the daemon's monotonic clock, in ns
     * @return the new status; the very same object if the message says nothing that is bound and readable
     */
    PrinterStatus read(PrinterStatus before, String topic, Payload payload, long atNanos) {
        PrinterStatus after = before;
        for (ActiveBinding bound : bounds) {
            if (bound.wants(topic)) {
                after = bound.apply(after, topic, payload, atNanos);
            }
        }
        if (after == before) {
            return before;
        }
        after = derived.in(before, after, atNanos);
        after = conditions.withFaultText(before, after, atNanos);
        return after.judged(judge.judge(after, before.stateBeforeItWent()));
    }

    /**
     * Logs, once, each binding whose topic has brought nothing so far. Call this when the connection has been up long enough for a printer
     * to have reported something; may be called from another thread than {@link #read}.
     */
    synchronized void tellQuietTopics() {
        bounds.forEach(ActiveBinding::tellIfQuiet);
    }
}
