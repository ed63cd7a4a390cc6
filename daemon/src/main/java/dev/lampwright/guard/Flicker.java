package dev.lampwright.guard;

/** How some lights have flickered in the last second: their general flashes, and their red flashes by both definitions. */
final class Flicker {
    private final Trace general;
    private final Trace red;
    private final Trace hue;

    /**
     * Makes one without a past.
     *
     * @param window the last second
     * @param sight the measures of the lights
     */
    Flicker(Window window, FlashMeasure sight) {
        general = new Trace(window, sight.luminanceStep());
        red = new Trace(window, sight.rednessStep());
        hue = new Trace(window, RedDistance.STEP);
    }

    /** Whether what is seen may follow what was all admitted. */
    boolean admits(FlashMeasure sight) {
        return general.admits(sight.luminance(), true)
                && red.admits(sight.redness(), sight.isSaturatedRed())
                && hue.admits(sight.hue(), true);
    }

    /** Whether the last second and what is seen now keep the limit. */
    boolean isWithin(FlashMeasure sight) {
        return general.isWithin(sight.luminance(), true)
                && red.isWithin(sight.redness(), sight.isSaturatedRed())
                && hue.isWithin(sight.hue(), true);
    }

    /** Keeps what is seen. */
    void keep(FlashMeasure sight) {
        general.keep(sight.luminance(), true);
        red.keep(sight.redness(), sight.isSaturatedRed());
        hue.keep(sight.hue(), true);
    }
}
