package dev.lampwright.look;

/** What colour the pixels of a zone have. */
interface Paint {
    /**
     * Writes the colour of each pixel.
     *
     * @param moment the time and the signals
     * @param rgb linear light, three floats a pixel, pixel 0 where the zone begins; every one is written
     * @param pixels pixels of the zone
     */
    void paint(Moment moment, float[] rgb, int pixels);
}
