package dev.lampwright.colour;

import java.util.Locale;

/** Reads colours as CSS writes them. Source: CSS Color Module Level 4. */
public final class CssColour {
    private CssColour() {}

    /**
     * Reads a colour that covers what lies below.
     *
     * @param text a CSS colour, such as {@code orange}, {@code #ff8000} or {@code oklch(70% 0.15 50)}; case does not count
     * @return its light, mapped to what can be shown
     * @throws IllegalArgumentException if it is no such colour; the message says in one line what is wrong and what would be right
     */
    public static Light parse(String text) {
        Colour colour = colour(text);
        if (colour.alpha() < 1) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "\"%s\" has an alpha of %.2f, and the colour here must cover; leave its alpha out",
                    text,
                    colour.alpha()));
        }
        return colour.light();
    }

    /**
     * Reads a colour with all that CSS lets one say of it, alpha and {@code none} among it.
     *
     * @param text a CSS colour; case does not count
     * @return the colour
     * @throws IllegalArgumentException if it is none; the message says in one line what is wrong and what would be right
     */
    public static Colour colour(String text) {
        return new CssParser(text).colour();
    }
}
