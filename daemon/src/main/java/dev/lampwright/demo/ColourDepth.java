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

    private static final int FULL_LEVEL = 255;
    private static final int CUBE_START = 16;
    private static final int CUBE_LEVELS = 6;

    /**
     * The escape sequence that colours the following characters.
     *
     * @param red 0 to 1, encoded as in sRGB; as are the others
     * @param green likewise
     * @param blue likewise
     * @return an escape sequence; empty without colours
     */
    public String foreground(double red, double green, double blue) {
        return switch (this) {
            case FULL ->
                "\u001b[38;2;" + Math.round(red * FULL_LEVEL) + ';' + Math.round(green * FULL_LEVEL) + ';'
                        + Math.round(blue * FULL_LEVEL) + 'm';
            case INDEXED ->
                "\u001b[38;5;" + (CUBE_START + (cube(red) * CUBE_LEVELS + cube(green)) * CUBE_LEVELS + cube(blue))
                        + 'm';
            case PLAIN -> "";
        };
    }

    private static long cube(double value) {
        return Math.round(value * (CUBE_LEVELS - 1));
    }

    /**
     * The escape sequence that resets colours.
     *
     * @return an escape sequence; empty without colours
     */
    public String reset() {
        return this == PLAIN ? "" : "\u001b[0m";
    }

    /**
     * What the terminal on standard output seems to show.
     *
     * @param environment the process's environment
     * @return {@link #PLAIN} if it is not a terminal, if the terminal says so, or if {@code NO_COLOR} is set
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
