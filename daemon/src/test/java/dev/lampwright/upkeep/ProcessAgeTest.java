package dev.lampwright.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
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

    /** The Java runtime counts from a moment after the process's start, so a process is never younger than that, except for two ticks. */
    @Test
    void isNotLessThanTheRuntimesOwnCount() {
        long runtime = ManagementFactory.getRuntimeMXBean().getUptime();
        Duration age = ProcessAge.now();
        assertTrue(age.toMillis() >= runtime - 20, () -> age + ", " + runtime + " ms");
    }

    /** By the kernel's own count, the process that the test starts is the younger one. */
    @Test
    void isOlderThanWhatItStarts() throws IOException, InterruptedException {
        Process started = new ProcessBuilder("sleep", "60").start();
        try {
            Path proc = Path.of("/proc");
            String uptime = Files.readString(proc.resolve("uptime"));
            String stat = Files.readString(proc.resolve(started.pid() + "/stat"));
            assertTrue(ProcessAge.of(stat, uptime).compareTo(ProcessAge.now()) < 0);
        } finally {
            started.destroyForcibly().waitFor();
        }
    }
}
