package dev.lampwright.service;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * Signals that the process ignores although nobody who started it wanted so: the native half of the serial library has SIGHUP and others
 * ignored as soon as it is loaded, and the Java runtime hears none of those any more.
 */
public final class IgnoredSignal {
    /** The number of SIGHUP, by POSIX. */
    public static final int HUP = 1;

    private static final Path STATUS = Path.of("/proc/self/status");
    private static final String IGNORED = "SigIgn:";
    private static final int HEX = 16;

    private IgnoredSignal() {}

    /** Functions of the C library. To be used only after {@link NativeHalf#load}. */
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
     * @return false also where that cannot be known
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
     * Gives a signal back what it does by itself, so that the runtime can be asked to hear it again.
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
