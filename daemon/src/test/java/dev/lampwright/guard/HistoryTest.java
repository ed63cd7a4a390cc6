package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import org.junit.jupiter.api.Test;

class HistoryTest {
    private static final long MILLI = 1_000_000;
    private static final long SECOND = 1000 * MILLI;

    private final History history = new History(3, 0, 10);

    private void add(long nanos) {
        history.moveTo(nanos);
        Frame frame = new Frame(3, 0);
        frame.strip()[0] = (byte) (history.newest() + 1);
        history.add(frame);
    }

    @Test
    void theBaseIsWhatWasOnWhenTheSecondBegan() {
        assertEquals(-1, history.base());
        for (int i = 0; i < 15; i++) {
            add(100 * MILLI * i);
        }
        assertEquals(14, history.newest());
        assertEquals(4, history.base(), "just one second before");
        assertEquals(4, history.oldest());
        assertEquals(6, history.frame(6).strip()[0]);
        history.moveTo(1401 * MILLI);
        assertEquals(4, history.base());
        history.moveTo(1500 * MILLI);
        assertEquals(5, history.base());
        assertEquals(6, history.baseAtNextRise(), "a sixth of a second later");
        history.moveTo(9 * SECOND);
        assertEquals(14, history.base(), "what is on stays on");
    }

    @Test
    void lateLightMakesTheSecondLonger() {
        history.expectLate(100 * MILLI);
        for (int i = 0; i < 15; i++) {
            add(100 * MILLI * i);
        }
        assertEquals(3, history.base());
        history.wereLate(50 * MILLI);
        history.moveTo(1400 * MILLI);
        assertEquals(3, history.base(), "less than usual changes nothing");
        history.wereLate(300 * MILLI);
        add(1500 * MILLI);
        assertEquals(3, history.oldest());
        assertEquals(2, history.base());
        history.moveTo(3400 * MILLI);
        assertEquals(15, history.base());
        add(3500 * MILLI);
        add(4550 * MILLI);
        assertEquals(15, history.base(), "after two seconds it is as usual");
    }

    @Test
    void itHoldsTwoSecondsOfFrames() {
        for (int i = 0; i < 24; i++) {
            assertTrue(history.hasRoom());
            add(i);
        }
        assertFalse(history.hasRoom());
        history.moveTo(2 * SECOND);
        assertTrue(history.hasRoom());
        assertThrows(IllegalArgumentException.class, () -> new History(3, 0, 0));
    }

    @Test
    void eachNewStartOfTheControllerTakesTwoTransitions() {
        history.moveTo(0);
        assertEquals(7, history.mostTransitions());
        history.relit();
        history.moveTo(100 * MILLI);
        assertEquals(5, history.mostTransitions());
        history.relit();
        history.moveTo(200 * MILLI);
        assertEquals(3, history.mostTransitions());
        history.moveTo(1100 * MILLI);
        assertEquals(3, history.mostTransitions());
        history.moveTo(1101 * MILLI);
        assertEquals(5, history.mostTransitions());
        history.moveTo(1201 * MILLI);
        assertEquals(7, history.mostTransitions());
    }
}
