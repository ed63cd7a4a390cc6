package dev.lampwright.look;

/** Gives the pixels of a zone their colours. May remember what was before; for one layer. */
@FunctionalInterface
public interface Paint {
    /**
     * Writes the colour of each pixel.
     *
     * @param moment the time and the signals
     * @param rgba linear light, not premultiplied, and alpha: four floats for each place of the zone, place 0 where it begins; every
     *     one is written
     * @param pixels length of the zone
     */
    void paint(Moment moment, float[] rgba, int pixels);
}
