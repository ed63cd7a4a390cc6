package dev.lampwright.colour;

/** Turns a duty into one of the 256 levels that a strip takes. */
interface Rounding {
    /** The highest level. */
    int FULL = 255;

    /**
     * Rounds.
     *
     * @param duty what lies outside 0 to 1 is cut off
     * @param channel which of the strip's bytes it is for
     * @return the level as an unsigned byte
     */
    byte level(float duty, int channel);
}
