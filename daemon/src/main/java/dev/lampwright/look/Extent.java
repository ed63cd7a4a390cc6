package dev.lampwright.look;

/**
 * Which pixels of a zone a layer covers. Edges that fall inside a pixel are drawn as partial cover, and an edge may be softened, so
 * slow movement has no steps. May keep room to work in; for one layer.
 */
@FunctionalInterface
public interface Extent {
    /**
     * Writes how far each pixel is covered.
     *
     * @param moment the time and the signals
     * @param cover 0 to 1 for each place of the zone, place 0 where it begins; every one is written
     * @param pixels length of the zone
     */
    void cover(Moment moment, float[] cover, int pixels);
}
