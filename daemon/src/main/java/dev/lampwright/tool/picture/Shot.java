package dev.lampwright.tool.picture;

/** What the lights showed at one time, or in the mean over a short one. Immutable. */
final class Shot {
    private final int[] strip;
    private final int[] lamps;
    private final String caption;

    /**
     * Makes a shot.
     *
     * @param strip colour of each pixel of the strip, as {@code 0xRRGGBB} in sRGB; kept
     * @param lamps colour of each lamp; kept
     * @param caption what was going on
     */
    Shot(int[] strip, int[] lamps, String caption) {
        this.strip = strip;
        this.lamps = lamps;
        this.caption = caption;
    }

    /** The colour of a pixel of the strip, as {@code 0xRRGGBB} in sRGB. */
    int pixel(int index) {
        return strip[index];
    }

    /** The colour of a lamp, in the order of {@link Lamp#of}. */
    int lamp(int index) {
        return lamps[index];
    }

    /** What was going on; may be empty. */
    String caption() {
        return caption;
    }
}
