package dev.lampwright.demo;

import dev.lampwright.colour.Decoder;

/** Draws a strip's bytes as text: one block per pixel, in the colours of the terminal. */
public final class StripPicture {
    private static final char BLOCK = '█';
    private static final String SHADES = " .:-=+*#%@";

    private final Decoder decoder;
    private final ColourDepth depth;

    /**
     * Creates one.
     *
     * @param order the strip's order of channels
     * @param depth colours of the terminal
     */
    public StripPicture(String order, ColourDepth depth) {
        decoder = new Decoder(order);
        this.depth = depth;
    }

    /**
     * Draws the strip.
     *
     * @param strip the strip's bytes in its own order
     * @return one character per pixel, with the escape sequences that colour it
     */
    public String of(byte[] strip) {
        StringBuilder text = new StringBuilder();
        for (int pixel = 0; pixel < decoder.pixels(strip); pixel++) {
            double[] colour = decoder.screen(strip, pixel);
            text.append(cell(colour[0], colour[1], colour[2]));
        }
        return text.append(depth.reset()).toString();
    }

    private String cell(double red, double green, double blue) {
        return depth == ColourDepth.PLAIN
                ? shade(Math.max(red, Math.max(green, blue)))
                : depth.foreground(red, green, blue) + BLOCK;
    }

    private static String shade(double light) {
        return Character.toString(SHADES.charAt((int) Math.round(light * (SHADES.length() - 1))));
    }
}
