package dev.lampwright.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class LimitedTest {
    @Test
    void whatHangsIsKilledWithItsChildren() throws IOException, InterruptedException {
        Process process = Limited.start(new ProcessBuilder("sh", "-c", "sleep 1000; true"), Duration.ofMillis(300));
        assertEquals(0, process.getInputStream().readAllBytes().length);
        assertNotEquals(0, process.waitFor());
    }

    /** As in the background of a script, and under nohup. */
    @Test
    void signalsWorkThoughTheyAreIgnoredAround() throws IOException, InterruptedException {
        String kill = String.join(" ", Limited.withUsualSignals(List.of("sh", "-c", "'kill -INT $$; sleep 1000'")));
        Process process = Limited.start(
                new ProcessBuilder("sh", "-c", "trap '' INT HUP QUIT; exec " + kill), Duration.ofSeconds(30));
        assertEquals(128 + 2, process.waitFor(), "SIGINT is number 2: signal(7)");
    }
}
