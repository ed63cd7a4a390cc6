package dev.lampwright.printer;

import dev.lampwright.broker.BrokerState;
import java.util.Optional;

/** Why nothing is heard of the printer. */
public enum Silence {
    /** It has said nothing for long, though the broker is there. */
    NOTHING_HEARD("nothing heard for %d s"),
    /** Its last will says that it is gone. */
    LAST_WILL("its last will reports it offline"),
    /** It has said nothing for long, and there is no connection to the broker. */
    BROKER_GONE("nothing heard for %d s, because the broker is gone");

    private final String words;

    Silence(String words) {
        this.words = words;
    }

    /**
     * Why, for people.
     *
     * @param quietSeconds for how long nothing has been heard
     * @return a clause
     */
    String words(long quietSeconds) {
        return words.formatted(quietSeconds);
    }

    /**
     * Looks whether and why there is silence.
     *
     * @param status what is known of the printer
     * @param broker how things stand with the broker
     * @param quietNanos for how long nothing has been heard
     * @param silentAfterNanos how long is long
     * @return empty if the printer is heard
     */
    static Optional<Silence> of(PrinterStatus status, BrokerState broker, long quietNanos, long silentAfterNanos) {
        if (status.isGone()) {
            return Optional.of(LAST_WILL);
        }
        if (quietNanos <= silentAfterNanos) {
            return Optional.empty();
        }
        return Optional.of(broker.phase() == BrokerState.Phase.CONNECTED ? NOTHING_HEARD : BROKER_GONE);
    }
}
