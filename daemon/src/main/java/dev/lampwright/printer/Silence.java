package dev.lampwright.printer;

import dev.lampwright.broker.BrokerState;
import java.util.Optional;

/** Why the printer is silent. */
public enum Silence {
    /** It has reported nothing for long, though the broker is connected. */
    NOTHING_HEARD("nothing heard for %d s"),
    /** Its last will reports it offline. */
    LAST_WILL("its last will reports it offline"),
    /** It has reported nothing for long, and there is no connection to the broker. */
    BROKER_GONE("nothing heard for %d s, because the broker is gone");

    private final String words;

    Silence(String words) {
        this.words = words;
    }

    /**
     * Why, in words for the user.
     *
     * @param quietSeconds for how long nothing has been heard
     * @return a clause
     */
    String words(long quietSeconds) {
        return words.formatted(quietSeconds);
    }

    /**
     * Checks whether and why the printer is silent.
     *
     * @param status what is known of the printer
     * @param broker the state of the connection to the broker
     * @param quietNanos for how long nothing has been heard
     * @param silentAfterNanos how long is long
     * @return empty if the printer is not silent
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
