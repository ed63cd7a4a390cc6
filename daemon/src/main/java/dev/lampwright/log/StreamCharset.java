package dev.lampwright.log;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The charset of the standard streams: that of the locale, or UTF-8 in the C locale, which is the default of a service or a remote shell
 * and says nothing about the terminal. In its ASCII, degrees and ohms would become question marks.
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

    /** The charset to use for the one of the locale. */
    static Charset insteadOf(Charset locale) {
        return locale.equals(StandardCharsets.US_ASCII) ? StandardCharsets.UTF_8 : locale;
    }

    /**
     * Writes to a standard stream.
     *
     * @param stream {@code System.out} or {@code System.err}
     * @return a writer that flushes each line
     */
    public static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, current()), true);
    }
}
