package dev.lampwright.cue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.printer.PrinterState;
import org.junit.jupiter.api.Test;

class AlarmWatchTest {
    @Test
    void silenceDoesNotEndAFault() {
        AlarmWatch watch = new AlarmWatch(AlarmSequence.A_4);
        assertEquals(AlarmState.NORMAL, watch.step(PrinterState.SILENT, Wishes.NONE));
        assertEquals(AlarmState.ALERT, watch.step(PrinterState.FAULT, Wishes.NONE));
        assertEquals(AlarmState.ALERT, watch.step(PrinterState.SILENT, Wishes.NONE));
        assertEquals(AlarmState.NORMAL, watch.step(PrinterState.IDLE, Wishes.NONE));
    }

    @Test
    void anAcknowledgementCountsOnce() {
        AlarmWatch watch = new AlarmWatch(AlarmSequence.A);
        Wishes once = Wishes.NONE.acknowledged();
        watch.step(PrinterState.FAULT, Wishes.NONE);
        assertEquals(AlarmState.ACKNOWLEDGED, watch.step(PrinterState.FAULT, once));
        watch.step(PrinterState.IDLE, once);
        assertEquals(AlarmState.ALERT, watch.step(PrinterState.FAULT, once));
        assertEquals(AlarmState.ALERT, watch.step(PrinterState.FAULT, once));
    }

    @Test
    void aResetEndsWhatIsSeenAndOver() {
        AlarmWatch watch = new AlarmWatch(AlarmSequence.R);
        Wishes seen = Wishes.NONE.acknowledged();
        watch.step(PrinterState.FAULT, Wishes.NONE);
        watch.step(PrinterState.FAULT, seen);
        assertEquals(AlarmState.RINGBACK, watch.step(PrinterState.IDLE, seen));
        assertEquals(AlarmState.NORMAL, watch.step(PrinterState.IDLE, seen.reset()));
    }

    /** Reading the configuration again neither ends a fault nor counts an acknowledgement twice. */
    @Test
    void anotherGoesOnWhereOneStands() {
        AlarmWatch before = new AlarmWatch(AlarmSequence.M);
        Wishes seen = Wishes.NONE.acknowledged().reset();
        before.step(PrinterState.IDLE, seen);
        before.step(PrinterState.FAULT, seen);
        AlarmWatch after = new AlarmWatch(AlarmSequence.M);
        after.takeOver(before);
        assertEquals(AlarmState.ALERT, after.state());
        assertEquals(AlarmState.ALERT, after.step(PrinterState.SILENT, seen));
        assertEquals(AlarmState.ACKNOWLEDGED, after.step(PrinterState.FAULT, seen.acknowledged()));
        AlarmWatch last = new AlarmWatch(AlarmSequence.M);
        last.takeOver(after);
        assertEquals(AlarmState.ACKNOWLEDGED, last.step(PrinterState.IDLE, seen.acknowledged()));
        assertEquals(
                AlarmState.NORMAL,
                last.step(PrinterState.IDLE, seen.acknowledged().reset()));
        assertEquals(AlarmState.NORMAL, last.state());
    }
}
