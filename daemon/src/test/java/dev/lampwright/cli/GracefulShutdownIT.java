package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Limited;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Signals to a process that does not end. */
@Timeout(60)
class GracefulShutdownIT {
    private static final String MINUTES = "600000";

    private Process process;
    private BufferedReader output;

    private void start(String longestMillis) throws IOException {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        List<String> command = List.of(
                java.toString(),
                "-cp",
                System.getProperty("java.class.path"),
                GracefulShutdownProbe.class.getName(),
                longestMillis);
        process = Limited.start(
                new ProcessBuilder(Limited.withUsualSignals(command)).redirectErrorStream(true), Duration.ofMinutes(2));
        output = process.inputReader(StandardCharsets.UTF_8);
        assertEquals("ready", output.readLine());
    }

    @AfterEach
    void end() {
        process.destroyForcibly();
    }

    private int signal(String name) throws IOException, InterruptedException {
        return new ProcessBuilder(List.of("kill", "-" + name, Long.toString(process.pid())))
                .start()
                .waitFor();
    }

    /** 128 and the signal's number: POSIX.1-2017, Shell and Utilities, 2.8.2; numbers of SIGINT and SIGTERM: signal(7). */
    @Test
    void aSecondSignalEndsItAtOnce() throws IOException, InterruptedException {
        start(MINUTES);
        signal("TERM");
        assertEquals("asked", output.readLine());
        signal("TERM");
        assertEquals(128 + 15, process.waitFor());
    }

    @Test
    void soDoesCtrlCAfterATermination() throws IOException, InterruptedException {
        start(MINUTES);
        signal("TERM");
        assertEquals("asked", output.readLine());
        signal("INT");
        assertEquals(128 + 2, process.waitFor());
    }

    @Test
    void itIsNotWaitedForLongerThanItMayTake() throws IOException, InterruptedException {
        start("50");
        signal("INT");
        assertEquals("asked", output.readLine());
        assertEquals(0, process.waitFor());
    }
}
