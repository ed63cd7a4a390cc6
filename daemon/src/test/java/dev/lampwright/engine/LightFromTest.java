package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A process sends its first frame when it is a second old, and never waits for longer than that. */
class LightFromTest {
    @ParameterizedTest
    @CsvSource({"0, 1000", "400, 600", "999, 1", "1000, 0", "5000, 0", "-5000, 1000"})
    void theFirstFrameWaits(long ageMillis, long waitMillis) {
        long now = 42;
        assertEquals(now + waitMillis * 1_000_000, Daemon.lightFrom(Duration.ofMillis(ageMillis), now));
    }
}
