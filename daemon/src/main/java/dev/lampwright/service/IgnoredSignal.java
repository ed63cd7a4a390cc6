package dev.lampwright.service;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * Signals that the process ignores although it was not started that way: the native half of the serial library sets SIGHUP and others to be
 * ignored as soon as it is loaded, and the Java runtime then no longer receives them.
 */
public final class IgnoredSignal {
    /** The number of SIGHUP, by POSIX. */
    public static final int HUP = 1;

    private static final Path STATUS = Path.of("/proc/self/status");
    private static final String IGNORED = "SigIgn:";
    private static final int HEX = 16;

    private IgnoredSignal() {}

    /** Functions of the C library. Use only after {@link NativeHalf#load}. */
    private static final class C {
        static {
            Native.register("c");
        }

        private C() {}

        static native Pointer signal(int number, Pointer handler) throws LastErrorException;
    }

    /**
     * Whether the process ignores a signal, by the mask in proc(5).
     *
     * @param number of the signal, 1 or more
     * @return false also if unknown
     */
    public static boolean is(int number) {
        try (Stream<String> lines = Files.lines(STATUS)) {
            return lines.filter(line -> line.startsWith(IGNORED))
                    .map(line -> line.substring(IGNORED.length()).strip())
                    .anyMatch(mask -> (Long.parseUnsignedLong(mask, HEX) >>> (number - 1) & 1) == 1);
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Restores a signal's default action, so that the runtime can listen for it again.
     *
     * @param number of the signal
     * @throws IOException if the native half of JNA cannot be loaded
     */
    public static void end(int number) throws IOException {
        NativeHalf.load();
        try {
            C.signal(number, Pointer.NULL);
        } catch (LastErrorException | LinkageError e) {
            throw new IOException("signal " + number + " stays ignored: " + e.getMessage(), e);
        }
    }
}
