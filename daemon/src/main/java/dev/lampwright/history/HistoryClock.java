package dev.lampwright.history;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * The clocks of the history: one that nobody sets, and the wall clock.
 *
 * <p>The first counts from the boot and continues while the machine sleeps, as {@code /proc/uptime} does (proc(5); CLOCK_BOOTTIME):
 * {@link System#nanoTime} stops then, and waking up would look like a change of the wall clock.
 */
public interface HistoryClock {
    /** Those of the machine. */
    HistoryClock SYSTEM = of(HistoryClock::uptime);

    /**
     * The machine's clocks, with a different clock that nobody sets.
     *
     * @param boot provides the ms since the boot
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
     * The clock of the rest of the daemon.
     *
     * @return ns
     */
    long nanos();

    /**
     * The wall clock.
     *
     * @return ms since 1970 in UTC
     */
    long wallMillis();
}
