package dev.lampwright.upkeep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/**
 * How long this process has been running, by the system's own clock since boot. Java's start time of a process is not precise enough: it is
 * based on the boot time in whole seconds, and may be almost a second too early.
 */
public final class ProcessAge {
    /** Ticks of {@code /proc} in a second, {@code USER_HZ}; from memory: 100 on every architecture that Debian builds for. */
    private static final long TICKS_A_SECOND = 100;

    private static final long TICK_MILLIS = 1000 / TICKS_A_SECOND;

    /** Place of {@code starttime}, the field 22 of proc(5), among those after the name, which start with field 3. */
    private static final int START = 22 - 3;

    private static final Path PROC = Path.of("/proc");

    private ProcessAge() {}

    /**
     * How old this process is.
     *
     * @return its age, rounded down to ticks of 10 ms; zero if the system does not say
     */
    public static Duration now() {
        try {
            return of(Files.readString(PROC.resolve("self/stat")), Files.readString(PROC.resolve("uptime")));
        } catch (IOException e) {
            return Duration.ZERO;
        }
    }

    /**
     * How old a process is.
     *
     * @param stat its {@code /proc/PID/stat}
     * @param uptime {@code /proc/uptime}
     * @return its age, zero or more; zero if one of the texts is not valid
     */
    static Duration of(String stat, String uptime) {
        try {
            String afterName = stat.substring(stat.lastIndexOf(')') + 1).strip();
            long ticks = Long.parseLong(List.of(afterName.split(" ", -1)).get(START));
            double seconds = Double.parseDouble(uptime.strip().split(" ", -1)[0]);
            long millis = (long) (seconds * 1000) - (ticks + 1) * TICK_MILLIS;
            return Duration.ofMillis(Math.max(0, millis));
        } catch (NumberFormatException | IndexOutOfBoundsException e) {
            return Duration.ZERO;
        }
    }
}
