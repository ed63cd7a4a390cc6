package dev.lampwright.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The fields are those of proc(5): number 22 of {@code stat} is {@code starttime}, in ticks since the system was booted. */
class ProcessAgeTest {
    private static final String AFTER_NAME = " S 1 5 5 0 -1 4194304 125 0 0 0 0 0 0 0 20 0 1 0 1234 3133440 388";

    @Test
    void isTheTimeSinceItsStart() {
        assertEquals(Duration.ofMillis(650), ProcessAge.of("7 (java)" + AFTER_NAME, "13.00 20.50\n"));
    }

    @Test
    void aNameMayLookLikeTheRest() {
        assertEquals(Duration.ofMillis(650), ProcessAge.of("7 (a) b (c d)" + AFTER_NAME, "13.00 20.50\n"));
    }

    @Test
    void isNeverNegative() {
        assertEquals(Duration.ZERO, ProcessAge.of("7 (java)" + AFTER_NAME, "12.34 20.50\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "7 (java) S 1 5", "no process"})
    void whatIsNotUnderstoodIsNoAge(String stat) {
        assertEquals(Duration.ZERO, ProcessAge.of(stat, "13.00 20.50\n"));
    }

    @Test
    void anUptimeThatIsNoNumberIsNoAge() {
        assertEquals(Duration.ZERO, ProcessAge.of("7 (java)" + AFTER_NAME, "long\n"));
    }

    /** The Java runtime counts from a moment a little after the process's start, by a clock that nobody sets. */
    @Test
    void agreesWithTheRuntimesOwnCount() {
        Duration age = ProcessAge.now();
        Duration runtime =
                Duration.ofMillis(ManagementFactory.getRuntimeMXBean().getUptime());
        assertTrue(age.compareTo(Duration.ZERO) > 0, age::toString);
        assertTrue(age.minus(runtime).compareTo(Duration.ofSeconds(30)) < 0, () -> age + ", " + runtime);
    }
}
