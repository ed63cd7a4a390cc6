package dev.lampwright.history;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * What time it is for the history: on a clock that nobody sets, and on the wall.
 *
 * <p>The first counts from the boot and goes on while the machine sleeps, as {@code /proc/uptime} has it (proc(5); CLOCK_BOOTTIME):
 * {@link System#nanoTime} stands still then, and waking up would look like a clock on the wall that was set.
 */
public interface HistoryClock {
    /** The machine's. */
    HistoryClock SYSTEM = of(HistoryClock::uptime);

    /**
     * The machine's, with another clock that nobody sets.
     *
     * @param boot gives the ms since the boot
     */
    static HistoryClock of(LongSupplier boot) {
        return new HistoryClock() {
            @Override
            public long millis() {
                return boot.getAsLong();
            }

            @Override
            public long nanos() {
                return System.nanoTime();
            }

            @Override
            public long wallMillis() {
                return System.currentTimeMillis();
            }
        };
    }

    private static long uptime() {
        try {
            return Math.round(
                    Double.parseDouble(Files.readString(Path.of("/proc/uptime")).split(" ", 2)[0]) * 1000);
        } catch (IOException | NumberFormatException e) {
            return TimeUnit.NANOSECONDS.toMillis(System.nanoTime());
        }
    }

    /**
     * The time of this run.
     *
     * @return ms
     */
    long millis();

    /**
     * The clock by which the rest of the daemon goes.
     *
     * @return ns
     */
    long nanos();

    /**
     * The clock on the wall.
     *
     * @return ms since 1970 in UTC
     */
    long wallMillis();
}
