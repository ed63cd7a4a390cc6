package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is known about the last second, and what that allows. White and black in turn, eight frames each, at sixty frames a second. */
class KnownPastTest {
    private static final int RATE = 60;
    private static final int HALF = 8;
    private static final long MILLI = 1_000_000;

    private final Fitted fitted = Fitted.strip(10, Map.of("bed", Zone.run(0, 4)));
    private final Guards guards = guards(fitted, false);

    @Test
    void theSameLightsInOtherZonesAreKnown() {
        Fitted other = Fitted.strip(10, Map.of("job", Zone.run(5, 9)));
        assertTrue(guards(other, false).takeOver(guards));
    }

    @Test
    void otherLightsAreNot() {
        assertFalse(guards(Fitted.strip(11, Map.of()), false).takeOver(guards));
    }

    @Test
    void lightThatWasAllowedToFlashIsNot() {
        assertFalse(guards(fitted, false).takeOver(guards(fitted, true)));
        assertTrue(guards(fitted, true).takeOver(guards), "light that may flash need not wait");
    }

    /** Seven transitions, the maximum; two fewer if the controller may have gone dark and come back. */
    @Test
    void aControllerThatStartsAgainTakesTwoTransitions() {
        assertEquals(7, transitions(guards, 0, 7 * HALF + 1));
        Guards relit = guards(fitted, false);
        run(relit, 0, 1);
        relit.relit();
        assertEquals(5, transitions(relit, 1, 7 * HALF + 1));
    }

    /** A second later it no longer matters. */
    @Test
    void thatIsForgottenAfterASecond() {
        run(guards, 0, 1);
        guards.relit();
        hold(guards, Fitted.strip(10, Map.of()).filled(0), 3 * RATE);
        assertEquals(7, transitions(guards, 4 * RATE, 4 * RATE + 7 * HALF + 1));
    }

    /** A gap as long as the holdover, here 3 s, counts as a new start of the controller. */
    @Test
    void afterTheHoldoverTheControllerShowedSomethingItself() {
        run(guards, 0, 1);
        assertEquals(5, transitions(guards, 4 * RATE, 4 * RATE + 7 * HALF + 1));
    }

    /** At one change every 160 ms seven fit into 1.1 s and not into 1.3 s; what was late counts for two seconds. */
    @Test
    void lateLightMakesTheSecondLonger() {
        int third = RATE / 6;
        Guards late = guards(fitted, false);
        run(late, 0, 1);
        late.wereLate(300 * MILLI);
        assertEquals(0, late.heldFrames());
        blink(late, 1, third, 2 * RATE);
        assertTrue(late.heldFrames() > 0, "three a second is too much if a second is 1.3 s long");
        Guards onTime = guards(fitted, false);
        blink(onTime, 0, third, 2 * RATE);
        assertEquals(0, onTime.heldFrames());
    }

    private static Guards guards(Fitted fitted, boolean allowFlashing) {
        GuardSettings settings = new GuardSettings(Optional.empty(), 2, allowFlashing, List.of());
        return new Guards(fitted.setup(), fitted.fitting(), settings, RATE);
    }

    private void blink(Guards with, int from, int half, int to) {
        for (int tick = from; tick < to; tick++) {
            hold(with, fitted.filled(tick / half % 2 * 255), tick);
        }
    }

    private void run(Guards with, int from, int to) {
        for (int tick = from; tick < to; tick++) {
            hold(with, fitted.filled(0), tick);
        }
    }

    /** From dark: how often the light changes up to a tick, eight frames before each change. */
    private int transitions(Guards with, int from, int to) {
        int changes = 0;
        int before = 0;
        for (int tick = from; tick <= to; tick++) {
            Frame frame = fitted.filled((tick - from) / HALF % 2 * 255);
            hold(with, frame, tick);
            int now = frame.strip()[0] & 0xFF;
            changes += now == before ? 0 : 1;
            before = now;
        }
        return changes;
    }

    private static void hold(Guards with, Frame frame, long tick) {
        with.hold(frame, tick * 1_000_000_000L / RATE);
    }
}
