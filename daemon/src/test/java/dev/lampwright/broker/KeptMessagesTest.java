package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

final class KeptMessagesTest {
    private final KeptMessages kept = new KeptMessages();

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void nothingWasHeardAtFirst() {
        assertFalse(kept.isHeard("job", bytes("RUN")));
        assertFalse(kept.isHeard("job", bytes("")));
    }

    @Test
    void whatWasKeptIsKnownAgain() {
        kept.note("job", bytes("RUN"));
        assertTrue(kept.isHeard("job", bytes("RUN")));
        assertFalse(kept.isHeard("job", bytes("ALARM")));
        assertFalse(kept.isHeard("heat", bytes("RUN")));
    }

    /** A printer that has its messages retained: what was heard live comes again as retained. */
    @Test
    void whatWasHeardLiveIsKnownWhenItIsKept() {
        kept.note("job", bytes("RUN"));
        assertTrue(kept.isHeard("job", bytes("RUN")));
    }

    /** A printer that reports again what it said long ago, while nobody listens. */
    @Test
    void whatWasHeardBeforeSomethingElseIsNews() {
        kept.note("job", bytes("READY"));
        kept.note("job", bytes("RUN"));
        assertFalse(kept.isHeard("job", bytes("READY")));
    }

    @Test
    void theOldestTopicsAreForgotten() {
        for (int i = 0; i <= KeptMessages.MOST; i++) {
            kept.note("job " + i, bytes("RUN"));
        }
        assertFalse(kept.isHeard("job 0", bytes("RUN")));
        assertTrue(kept.isHeard("job 1", bytes("RUN")));
        assertTrue(kept.isHeard("job " + KeptMessages.MOST, bytes("RUN")));
    }
}
