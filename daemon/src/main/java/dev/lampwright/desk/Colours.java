package dev.lampwright.desk;

import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Light;

/** Colours that can be asked for: those of CSS, and dark. */
final class Colours {
    private static final String DARK = "black";

    private Colours() {}

    /** The light of a colour that {@link #require} has accepted. */
    static Light light(String colour) {
        return CssColour.parse(colour.equals(Spoken.OFF) ? DARK : colour);
    }

    /** Refuses a value that is not a colour. */
    static void require(String place, String colour) throws RefusedException {
        try {
            light(colour);
        } catch (IllegalArgumentException e) {
            throw new RefusedException(
                    Reason.NOT_A_COLOUR, Request.shown(place), e.getMessage().replace(colour, Request.shown(colour)));
        }
    }
}
