package dev.lampwright.look;

/** Which pixels of a zone a layer covers. */
interface Extent {
    /**
     * Writes how far each pixel is covered.
     *
     * @param moment the time and the signals
     * @param cover 0 to 1 for each pixel, pixel 0 where the zone begins; every one is written
     * @param pixels pixels of the zone
     */
    void cover(Moment moment, float[] cover, int pixels);
}
