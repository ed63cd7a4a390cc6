package dev.lampwright.printer;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.HeardMessage;
import dev.lampwright.broker.KeptMessages;
import dev.lampwright.payload.Payload;
import dev.lampwright.upkeep.LineBudget;
import dev.lampwright.upkeep.Trouble;
import java.time.Duration;
import java.util.Optional;
import org.slf4j.Logger;

/** One of the printers on one connection: its bindings, and the status that results from its messages. */
final class HeardStatus {
    private static final int MOST_FAULT_LINES = 10;

    private final String name;
    private final Bindings bindings;
    private final StatusReader reader;
    private final KeptMessages kept = new KeptMessages();
    private final Trouble silences;
    private final LineBudget faults;
    private final long madeAtNanos;
    private volatile PrinterStatus status = PrinterStatus.nothingHeard();

    /**
     * Begins with a printer that has not been heard yet.
     *
     * @param name its name; empty if it has none
     * @param bindings where it reports what
     * @param log where to report faults and silence
     * @param nanos the time, in ns
     */
    HeardStatus(String name, Bindings bindings, Logger log, long nanos) {
        this.name = name;
        this.bindings = bindings;
        reader = new StatusReader(bindings);
        silences = new Trouble(log);
        faults = new LineBudget(log, MOST_FAULT_LINES, name.isEmpty() ? "faults of the printer" : "faults of " + name);
        madeAtNanos = nanos;
    }

    String name() {
        return name;
    }

    PrinterStatus status() {
        return status;
    }

    /** Keeps what was known before, as far as it was reported in the same places. */
    void goOnFrom(HeardStatus before) {
        status = before.status.kept(before.bindings, bindings);
    }

    /**
     * Takes in a message.
     *
     * @param message the message; a retained one does not show that the printer is online
     * @param nanos when it came
     * @return the new status; empty if it says nothing about this printer
     */
    Optional<PrinterStatus> read(HeardMessage message, long nanos) {
        String topic = message.topic();
        byte[] payload = message.payload();
        if (message.isRetained() && kept.isHeard(topic, payload)) {
            return Optional.empty();
        }
        PrinterStatus before = message.isRetained() ? status : status.back();
        PrinterStatus after = reader.read(before, topic, message.opened(Payload::new), nanos);
        if (after == before) {
            return Optional.empty();
        }
        kept.note(topic, payload);
        faultLine(name, status, after).ifPresent(line -> faults.warn(line, nanos));
        status = after;
        return Optional.of(after);
    }

    /** Whether and why it is silent; empty if it is not. */
    Optional<Silence> silence(BrokerState broker, Duration silentAfter, long nanos) {
        return Silence.of(status, broker, quietNanos(nanos), silentAfter.toNanos());
    }

    private long quietNanos(long nanos) {
        PrinterStatus newest = status;
        return nanos - (newest.heard() ? newest.heardAtNanos() : madeAtNanos);
    }

    /** Logs when silence begins and ends. */
    void tellSilence(BrokerState broker, Duration silentAfter, long nanos) {
        String what = name.isEmpty() ? "printer" : "printer " + name;
        Optional<Silence> silence = silence(broker, silentAfter, nanos);
        if (silence.isEmpty()) {
            silences.ends(what + ": heard again");
        } else {
            long quietSeconds = Duration.ofNanos(quietNanos(nanos)).toSeconds();
            silences.begins(silence.get().name(), what + ": " + silence.get().words(quietSeconds), nanos);
        }
    }

    /** Logs the places where nothing was reported. */
    void tellQuietTopics() {
        reader.tellQuietTopics();
    }

    /**
     * What to log about a fault: one line when it begins, and another for each new text that the printer reports for it.
     *
     * @param name of the printer; empty if it has none
     * @param before the status up to a message
     * @param after the status with the message in it
     * @return a line; empty if nothing is new
     */
    static Optional<String> faultLine(String name, PrinterStatus before, PrinterStatus after) {
        boolean begins = before.state() != PrinterState.FAULT;
        boolean news = !after.faultText().equals(before.faultText());
        if (after.state() != PrinterState.FAULT || !(begins || news)) {
            return Optional.empty();
        }
        String who = name.isEmpty() ? "the printer" : name;
        return after.faultText()
                .map(text -> who + " reports a fault: " + text)
                .or(() -> begins ? Optional.of(who + " reports a fault") : Optional.empty());
    }
}
