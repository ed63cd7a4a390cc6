package dev.lampwright.service;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class BootTimeTest {
    /** {@code /proc/uptime} has hundredths of a second. */
    private static final long COARSE_MILLIS = 20;

    private static long uptime() throws IOException {
        return Math.round(
                Double.parseDouble(Files.readString(Path.of("/proc/uptime")).split(" ", 2)[0]) * 1000);
    }

    /** Source: proc(5), "/proc/uptime": the uptime of the system, including time spent in suspend. */
    @Test
    void saysTheSameAsTheSystemsFile() throws IOException {
        assertFalse(BootTime.isNeeded());
        long before = uptime();
        long millis = BootTime.millis();
        long after = uptime();
        assertTrue(before - COARSE_MILLIS <= millis && millis <= after + COARSE_MILLIS, millis + " ms");
    }
}
