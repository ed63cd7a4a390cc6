package dev.lampwright.service;

import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * How long ago the machine was booted, sleep included: CLOCK_BOOTTIME of clock_gettime(2). For a service to which {@code ProcSubset=pid}
 * hides {@code /proc/uptime}, which gives the same value.
 */
public final class BootTime {
    /** By the kernel's {@code include/uapi/linux/time.h} (from memory). */
    private static final int CLOCK_BOOTTIME = 7;

    private static final Path UPTIME = Path.of("/proc/uptime");

    private BootTime() {}

    /** Functions of the C library. Use only after {@link NativeHalf#load}. */
    private static final class C {
        static {
            Native.register("c");
        }

        private C() {}

        static native int clock_gettime(int clock, byte[] timespec);
    }

    /** Whether the native half is available. */
    private static final class Loaded {
        static final boolean IS = loads();

        private static boolean loads() {
            try {
                NativeHalf.load();
                return true;
            } catch (IOException e) {
                return false;
            }
        }
    }

    /**
     * Whether the system hides the file that gives the same value without a native half.
     *
     * @return false if {@code /proc/uptime} can be read
     */
    public static boolean isNeeded() {
        return !Files.isReadable(UPTIME);
    }

    /**
     * The time since the boot.
     *
     * @return ms; by a clock that stops while the machine sleeps if the C library is not available
     */
    public static long millis() {
        byte[] timespec = new byte[2 * Long.BYTES];
        if (!Loaded.IS || C.clock_gettime(CLOCK_BOOTTIME, timespec) != 0) {
            return TimeUnit.NANOSECONDS.toMillis(System.nanoTime());
        }
        ByteBuffer fields = ByteBuffer.wrap(timespec).order(ByteOrder.nativeOrder());
        boolean isLong = NativeLong.SIZE == Long.BYTES;
        long seconds = isLong ? fields.getLong() : fields.getInt();
        long nanos = isLong ? fields.getLong() : fields.getInt();
        return TimeUnit.SECONDS.toMillis(seconds) + TimeUnit.NANOSECONDS.toMillis(nanos);
    }
}
