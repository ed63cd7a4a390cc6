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
}
