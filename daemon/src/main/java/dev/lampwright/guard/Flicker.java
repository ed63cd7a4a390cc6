package dev.lampwright.guard;

/** How some regions flicker: their general flashes, and their red flashes by both definitions of the standard. */
final class Flicker {
    private final Traces general;
    private final Traces red;
    private final Traces hue;

    /**
     * Makes one without a past.
     *
     * @param regions how many regions
     * @param weight sum of the weights of the lights in each
     * @param depth how many transitions of each kind are remembered, see {@link Traces}
     */
    Flicker(int regions, long weight, int depth) {
        general = new Traces(regions, luminanceStep(weight), depth);
        red = new Traces(regions, rednessStep(weight), depth);
        hue = new Traces(regions, hueStep(weight), depth);
    }

    /** The least change of luminance that is a transition: 10 % of the maximum relative luminance. */
    static long luminanceStep(long weight) {
        return LightMeasure.FULL_LUMINANCE / 10 * weight;
    }

    /**
     * The least change of redness that is a transition: more than 20 of 320, so the least sum above a sixteenth of full red. Source: WCAG
     * 2.0 and 2.1, working definition of a pair of opposing transitions involving a saturated red.
     */
    private static long rednessStep(long weight) {
        return LightReader.FULL * weight / LightMeasure.REDNESS_PER_STEP + 1;
    }

    /** The hue of several lights together says nothing, so it is judged light by light only. */
    private static long hueStep(long weight) {
        return weight == 1 ? RedDistance.STEP : Long.MAX_VALUE;
    }

    /** Changes of luminance. */
    Traces general() {
        return general;
    }

    /** Changes of redness. */
    Traces red() {
        return red;
    }

    /** Changes between saturated red and hues that are far from it. */
    Traces hue() {
        return hue;
    }

    /** Whether what is seen of a region would be more than a continuation. */
    boolean wouldMove(Regions regions, int region) {
        boolean isRed = regions.isRed(region);
        return general.wouldMove(region, regions.luminance(region), true)
                || red.wouldMove(region, regions.redness(region), isRed)
                || hue.wouldMove(region, regions.hue(region), isRed);
    }

    /** Keeps what is seen of a region at a time, or in a frame of that number. */
    void keep(Regions regions, int region, long when) {
        boolean isRed = regions.isRed(region);
        general.keep(region, regions.luminance(region), true, when);
        red.keep(region, regions.redness(region), isRed, when);
        hue.keep(region, regions.hue(region), isRed, when);
    }

    /** Keeps what is seen of all regions in a frame. */
    void keepAll(Regions regions, long frame) {
        for (int region = 0; region < regions.count(); region++) {
            keep(regions, region, frame);
        }
    }

    /** The most transitions of one kind that a region had after a time, or a frame of that number. */
    int transitionsAfter(int region, long when) {
        int ofLuminance = general.transitionsAfter(region, when);
        int ofRed = Math.max(red.transitionsAfter(region, when), hue.transitionsAfter(region, when));
        return Math.max(ofLuminance, ofRed);
    }

    /** Forgets all about a region. */
    void restart(int region) {
        general.restart(region);
        red.restart(region);
        hue.restart(region);
    }
}
