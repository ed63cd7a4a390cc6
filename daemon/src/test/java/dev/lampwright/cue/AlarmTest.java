package dev.lampwright.cue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Compared with the sequence tables of ANSI/ISA-18.1-1979 (R2004). The lines for A are as the manuals of the annunciators Dwyer AN24 (page
 * 32) and RTK UC625 (page 18) print them, those for M as the latter does; those for R, and for option 4, are from memory. The audible
 * device is left out: there is none.
 */
class AlarmTest {
    /** A step is written {@code N} or {@code F} for the process condition, with {@code +ack} or {@code +reset} for a pushbutton. */
    private static List<AlarmState> walk(AlarmSequence sequence, String steps) {
        Alarm alarm = new Alarm();
        return Stream.of(steps.split(" "))
                .map(step -> alarm.step(sequence, step.startsWith("F"), step.endsWith("+ack"), step.endsWith("+reset")))
                .toList();
    }

    private static List<AlarmState> states(String words) {
        return Stream.of(words.split(" "))
                .map(word -> AlarmState.valueOf(word.toUpperCase(Locale.ROOT)))
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        // Sequence A: automatic reset
        "A, N F F+ack F N, normal alert acknowledged acknowledged normal",
        "A, F N N N+ack, alert alert alert normal",
        "A, F N F N+ack, alert alert alert normal",
        "A, F F+reset F+ack F+reset, alert alert acknowledged acknowledged",
        "A, F+ack F, alert alert",
        "A, F F+ack N F, alert acknowledged normal alert",
        // Option 4: no lock-in
        "A_4, F N, alert normal",
        "A_4, F F+ack N, alert acknowledged normal",
        // Sequence M: manual reset
        "M, N F F+ack F N N N+reset, normal alert acknowledged acknowledged acknowledged acknowledged normal",
        "M, F N N+ack N N+reset, alert alert acknowledged acknowledged normal",
        "M, F F+ack F+reset N N+reset, alert acknowledged acknowledged acknowledged normal",
        "M, F F+ack N F N+reset, alert acknowledged acknowledged alert alert",
        "M, F N+reset N+ack, alert alert acknowledged",
        // Sequence R: ringback
        "R, N F F+ack F N N N+reset, normal alert acknowledged acknowledged ringback ringback normal",
        "R, F N N+ack N+reset, alert alert ringback normal",
        "R, F F+ack N F F+ack N, alert acknowledged ringback alert acknowledged ringback",
        "R, F F+ack F+reset N N+ack N+reset, alert acknowledged acknowledged ringback ringback normal",
        "R, N+ack N+reset, normal normal"
    })
    void stepByStep(AlarmSequence sequence, String steps, String expected) {
        assertEquals(states(expected), walk(sequence, steps));
    }

    /** Whatever happens, an unseen fault that lasts is alerting, and nothing but normal is shown before the first fault. */
    @ParameterizedTest
    @EnumSource
    void aFaultIsNeverOverlooked(AlarmSequence sequence) {
        Random random = new Random(20261125);
        for (int run = 0; run < 500; run++) {
            Alarm alarm = new Alarm();
            boolean before = false;
            boolean seen = true;
            for (int i = 0; i < 60; i++) {
                boolean fault = random.nextInt(4) == 0 ? !before : before;
                boolean acknowledge = random.nextInt(8) == 0;
                seen = (!fault || before) && (seen || acknowledge);
                AlarmState state = alarm.step(sequence, fault, acknowledge, random.nextInt(8) == 0);
                if (fault) {
                    assertEquals(seen ? AlarmState.ACKNOWLEDGED : AlarmState.ALERT, state);
                }
                before = fault;
            }
        }
    }

    @Test
    void anotherGoesOnWhereOneStands() {
        Alarm before = new Alarm();
        before.step(AlarmSequence.M, true, false, false);
        Alarm after = new Alarm();
        after.takeOver(before);
        assertEquals(AlarmState.ALERT, after.step(AlarmSequence.M, true, false, false));
        assertEquals(AlarmState.ACKNOWLEDGED, after.step(AlarmSequence.M, true, true, false));
    }
}
