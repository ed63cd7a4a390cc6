package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.cue.AlarmState;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FaultTextTest {
    private final Daemon.FaultText text = new Daemon.FaultText();

    @Test
    void staysUntilTheAlarmIsOver() {
        assertEquals("", text.during(AlarmState.NORMAL, Optional.of("all is well")));
        assertEquals("door open", text.during(AlarmState.ALERT, Optional.of("door open")));
        assertEquals("door open", text.during(AlarmState.RINGBACK, Optional.empty()));
        assertEquals("", text.during(AlarmState.NORMAL, Optional.empty()));
        assertEquals("", text.during(AlarmState.ALERT, Optional.empty()));
    }
}
