package dev.lampwright.demo;

import dev.lampwright.colour.Decoder;

/** Draws a strip's bytes as text: one block a pixel, in the colours that the terminal has. */
final class StripPicture {
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
    StripPicture(String order, ColourDepth depth) {
        decoder = new Decoder(order);
        this.depth = depth;
    }

    /**
     * Draws.
     *
     * @param strip the strip's bytes in its own order
     * @return one character a pixel, with the escape sequences that colour it
     */
    String of(byte[] strip) {
        StringBuilder text = new StringBuilder();
        for (int pixel = 0; pixel < decoder.pixels(strip); pixel++) {
            double[] colour = decoder.screen(strip, pixel);
            pixel(text, colour[0], colour[1], colour[2]);
        }
        return depth == ColourDepth.PLAIN ? text.toString() : text.append(RESET).toString();
    }

    private void pixel(StringBuilder text, double red, double green, double blue) {
        switch (depth) {
            case FULL ->
                text.append("\u001b[38;2;")
                        .append(Math.round(red * 255))
                        .append(';')
                        .append(Math.round(green * 255))
                        .append(';')
                        .append(Math.round(blue * 255))
                        .append("m█");
            case INDEXED ->
                text.append("\u001b[38;5;")
                        .append(CUBE_START + (cube(red) * CUBE_LEVELS + cube(green)) * CUBE_LEVELS + cube(blue))
                        .append("m█");
            default -> {
                double brightest = Math.max(red, Math.max(green, blue));
                text.append(SHADES.charAt((int) Math.round(brightest * (SHADES.length() - 1))));
            }
        }
    }

    private static long cube(double value) {
        return Math.round(value * (CUBE_LEVELS - 1));
    }
}
