package dev.lampwright.demo;

import dev.lampwright.colour.Decoder;

/** Draws a strip's bytes as text: one block a pixel, in the colours that the terminal has. */
public final class StripPicture {
    private static final String RESET = "\u001b[0m";
    private static final String SHADES = " .:-=+*#%@";
    private static final int CUBE_START = 16;
    private static final int CUBE_LEVELS = 6;

    private final Decoder decoder;
    private final ColourDepth depth;

    /**
     * Makes a drawer.
     *
     * @param order the strip's order of channels
     * @param depth colours of the terminal
     */
    public StripPicture(String order, ColourDepth depth) {
        decoder = new Decoder(order);
        this.depth = depth;
    }

    /**
     * Draws.
     *
     * @param strip the strip's bytes in its own order
     * @return one character a pixel, with the escape sequences that colour it
     */
    public String of(byte[] strip) {
        StringBuilder text = new StringBuilder();
        for (int pixel = 0; pixel < decoder.pixels(strip); pixel++) {
            double[] colour = decoder.screen(strip, pixel);
            text.append(cell(colour[0], colour[1], colour[2]));
        }
        return depth == ColourDepth.PLAIN ? text.toString() : text.append(RESET).toString();
    }

    private String cell(double red, double green, double blue) {
        return switch (depth) {
            case FULL ->
                "\u001b[38;2;" + Math.round(red * 255) + ';' + Math.round(green * 255) + ';' + Math.round(blue * 255)
                        + "m█";
            case INDEXED ->
                "\u001b[38;5;" + (CUBE_START + (cube(red) * CUBE_LEVELS + cube(green)) * CUBE_LEVELS + cube(blue))
                        + "m█";
            case PLAIN -> shade(Math.max(red, Math.max(green, blue)));
        };
    }

    private static String shade(double light) {
        return Character.toString(SHADES.charAt((int) Math.round(light * (SHADES.length() - 1))));
    }

    private static long cube(double value) {
        return Math.round(value * (CUBE_LEVELS - 1));
    }
}
