package dev.lampwright.cue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ConditionTest {
    private final Signals signals = new Signals(22);
    private final Situation situation = new Situation(signals);

    /** The first value of a signal takes effect at once. */
    private void progress(double share) {
        PrinterStatus status = PrinterStatus.nothingHeard().withReading(Quantity.JOB_PROGRESS, share, 0);
        signals.follow(status);
        situation.moveTo(status, PrinterState.PRINTING, 0);
    }

    /** Bounds are exclusive; the margin widens both, only once the value has been within. */
    @ParameterizedTest
    @CsvSource({
        "0.25, false, true",
        "0.375, true, true",
        "0.5, true, true",
        "0.75, false, true",
        "0.8125, false, true",
        "0.1875, false, true",
        "0.125, false, false",
        "0.875, false, false"
    })
    void boundsAreOutsideAndTheMarginIsForWhatWasWithin(double share, boolean outsideBefore, boolean withinBefore) {
        progress(share);
        Condition bounds = new Condition.WithinBounds(Signal.JOB_PROGRESS, 0.25, 0.75, 0.125);
        assertEquals(outsideBefore, bounds.holds(situation, false));
        assertEquals(withinBefore, bounds.holds(situation, true));
    }

    @Test
    void anUnknownSignalIsWithinNoBounds() {
        situation.moveTo(PrinterStatus.nothingHeard(), PrinterState.IDLE, 0);
        Condition any =
                new Condition.WithinBounds(Signal.JOB_PROGRESS, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, 1);
        assertFalse(any.holds(situation, false));
        assertFalse(any.holds(situation, true));
    }

    @ParameterizedTest
    @EnumSource
    void anAlarmIsInOneOfItsStates(AlarmState state) {
        situation.take(Wishes.NONE, state);
        Condition condition = new Condition.InAlarm(Set.of(AlarmState.ALERT, AlarmState.RINGBACK));
        assertEquals(state == AlarmState.ALERT || state == AlarmState.RINGBACK, condition.holds(situation, false));
    }

    @ParameterizedTest
    @EnumSource
    void aPrinterIsInOneOfItsStates(PrinterState state) {
        situation.moveTo(PrinterStatus.nothingHeard(), state, 0);
        Condition condition = new Condition.InState(Set.of(PrinterState.HELD, PrinterState.DONE));
        assertEquals(state == PrinterState.HELD || state == PrinterState.DONE, condition.holds(situation, false));
    }

    @Test
    void anEventGoesOnUntilItsEnd() {
        PrinterStatus status = PrinterStatus.nothingHeard().withEvent("door", 100, 0);
        Condition door = new Condition.DuringEvent("door");
        situation.moveTo(status, PrinterState.IDLE, 99);
        assertTrue(door.holds(situation, false));
        assertFalse(new Condition.DuringEvent("lid").holds(situation, false));
        situation.moveTo(status, PrinterState.IDLE, 101);
        assertFalse(door.holds(situation, true));
    }

    /** The words of the configuration. */
    @Test
    void statesAndSequencesHaveTheStandardsWords() {
        assertEquals(
                List.of("normal", "alert", "acknowledged", "ringback"),
                List.of(AlarmState.values()).stream().map(AlarmState::word).toList());
        assertEquals(
                List.of("A", "A-4", "M", "R"),
                List.of(AlarmSequence.values()).stream()
                        .map(AlarmSequence::designation)
                        .toList());
    }
}
