package dev.lampwright.colour;

import java.util.Locale;

/** Reads colours in CSS notation. Source: CSS Color Module Level 4. */
public final class CssColour {
    private CssColour() {}

    /**
     * Reads an opaque colour.
     *
     * @param text a CSS colour, such as {@code orange}, {@code #ff8000} or {@code oklch(70% 0.15 50)}; case does not count
     * @return its light, mapped to what can be shown
     * @throws IllegalArgumentException if it is not such a colour; the message says in one line what is wrong and what would be valid
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
     * Reads a colour with everything that CSS allows, including alpha and {@code none}.
     *
     * @param text a CSS colour; case does not count
     * @return the colour
     * @throws IllegalArgumentException if it is not valid; the message says in one line what is wrong and what would be valid
     */
    public static Colour colour(String text) {
        return new CssParser(text).colour();
    }
}
