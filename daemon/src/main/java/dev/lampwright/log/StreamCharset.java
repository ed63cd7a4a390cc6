package dev.lampwright.log;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * In what letters the standard streams are read and written: those of the locale, but UTF-8 in the C locale, which is what a service or a
 * remote shell has when nobody chose, and which says nothing of the terminal. In its ASCII, degrees and ohms would become question marks.
 */
public final class StreamCharset {
    private StreamCharset() {}

    /**
     * The charset.
     *
     * @return that of the locale, or UTF-8
     */
    public static Charset current() {
        return insteadOf(Charset.defaultCharset());
    }

    /** What is used where this is the locale's. */
    static Charset insteadOf(Charset locale) {
        return locale.equals(StandardCharsets.US_ASCII) ? StandardCharsets.UTF_8 : locale;
    }

    /**
     * Writes to a standard stream.
     *
     * @param stream {@code System.out} or {@code System.err}
     * @return a writer that puts out each finished line at once
     */
    public static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, current()), true);
    }
}
