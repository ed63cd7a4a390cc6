package dev.lampwright.demo;

import dev.lampwright.file.StandardStream;
import java.util.Locale;
import java.util.Map;

/** How many colours a terminal shows. */
public enum ColourDepth {
    /** 24 bits. */
    FULL,
    /** The 256 colours of the usual table: a cube of six levels a channel, and greys. */
    INDEXED,
    /** None: one line of plain text a second. */
    PLAIN;

    /**
     * What the terminal on standard output seems to show.
     *
     * @param environment the process's environment
     * @return {@link #PLAIN} if it is no terminal, if it says so, or if {@code NO_COLOR} is set
     */
    public static ColourDepth of(Map<String, String> environment) {
        String term = environment.getOrDefault("TERM", "dumb");
        if (!StandardStream.isTerminal(StandardStream.OUTPUT)
                || term.equals("dumb")
                || !environment.getOrDefault("NO_COLOR", "").isEmpty()) {
            return PLAIN;
        }
        String depth = environment.getOrDefault("COLORTERM", "").toLowerCase(Locale.ROOT);
        return depth.equals("truecolor") || depth.equals("24bit") || term.endsWith("-direct") ? FULL : INDEXED;
    }
}
