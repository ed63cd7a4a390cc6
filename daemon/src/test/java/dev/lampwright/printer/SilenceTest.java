package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.broker.BrokerState;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class SilenceTest {
    private static final long LONG = 20;
    private static final BrokerState CONNECTED = new BrokerState(BrokerState.Phase.CONNECTED, "");
    private static final BrokerState CONNECTING = new BrokerState(BrokerState.Phase.CONNECTING, "");
    private static final BrokerState LOST = new BrokerState(BrokerState.Phase.LOST, "nothing listens there");

    private final PrinterStatus heard = PrinterStatus.nothingHeard().heardAt(0);

    @Test
    void aPrinterThatIsHeardIsNotSilent() {
        assertEquals(Optional.empty(), Silence.of(heard, CONNECTED, LONG, LONG));
    }

    /** A broker that is away for a moment is not a reason to show silence: what was reported last stays valid for the usual time. */
    @Test
    void aBrokerThatIsGoneForAMomentChangesNothing() {
        assertEquals(Optional.empty(), Silence.of(heard, LOST, LONG, LONG));
    }

    @Test
    void theReasonsAreToldApart() {
        assertEquals(Optional.of(Silence.NOTHING_HEARD), Silence.of(heard, CONNECTED, LONG + 1, LONG));
        assertEquals(Optional.of(Silence.BROKER_GONE), Silence.of(heard, LOST, LONG + 1, LONG));
        assertEquals(Optional.of(Silence.BROKER_GONE), Silence.of(heard, CONNECTING, LONG + 1, LONG));
        assertEquals(Optional.of(Silence.LAST_WILL), Silence.of(heard.gone(0), CONNECTED, 0, LONG));
    }

    /** Losing the broker does not bring back a printer that has gone. */
    @Test
    void theLastWillHoldsWhateverTheBrokerDoes() {
        assertEquals(Optional.of(Silence.LAST_WILL), Silence.of(heard.gone(0), LOST, LONG + 1, LONG));
    }
}
