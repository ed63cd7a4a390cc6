package dev.lampwright.guard;

/** How some regions flicker: their general flashes, and their red flashes by both definitions of the standard. */
final class Flicker {
    private final Traces general;
    private final Traces red;
    private final Traces hue;
    private final boolean hasHue;

    /**
     * Makes one without a past.
     *
     * @param regions how many regions
     * @param weight sum of the weights of the lights in each
     * @param depth how many transitions of each kind are remembered, see {@link Traces}
     */
    Flicker(int regions, long weight, int depth) {
        general = Traces.marked(regions, luminanceStep(weight), depth);
        red = new Traces(regions, rednessStep(weight), depth);
        hue = new Traces(regions, RedDistance.STEP, depth);
        hasHue = weight == 1;
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

    /** Begins a search for moves through all regions. */
    void beginSearch() {
        general.beginSearch();
        red.beginSearch();
        hue.beginSearch();
    }

    /**
     * The first region, from one on, of which what is seen would be more than a continuation.
     *
     * @param withRed whether red flashes count as well
     * @return the number of regions if none is
     */
    int firstMove(Regions regions, int from, boolean withRed) {
        int first = general.firstMove(from, regions.count(), regions.luminances(), regions.always());
        if (withRed) {
            first = red.firstMove(from, first, regions.rednesses(), regions.reds());
            first = hasHue ? hue.firstMove(from, first, regions.hues(), regions.reds()) : first;
        }
        if (first < regions.count()) {
            general.pass(first);
            red.pass(first);
            hue.pass(first);
        }
        return first;
    }

    /** Keeps what is seen of a region at a time, or in a frame of that number. */
    void keep(Regions regions, int region, long when) {
        boolean isRed = regions.isRed(region);
        general.keep(region, regions.luminance(region), true, when);
        red.keep(region, regions.redness(region), isRed, when);
        if (hasHue) {
            hue.keep(region, regions.hue(region), isRed, when);
        }
    }

    /** Keeps what is seen of all regions in a frame, of red as well or not. */
    void keepAll(Regions regions, long when, boolean withRed) {
        general.keepAll(regions.luminances(), regions.always(), when);
        if (!withRed) {
            return;
        }
        red.keepAll(regions.rednesses(), regions.reds(), when);
        if (hasHue) {
            hue.keepAll(regions.hues(), regions.reds(), when);
        }
    }

    /** The same after a search through all regions, if nothing was changed by what it found. */
    void keepSearched(Regions regions, long when, boolean withRed) {
        general.keepSearched(regions.luminances(), regions.always(), when);
        if (!withRed) {
            return;
        }
        red.keepSearched(regions.rednesses(), regions.reds(), when);
        if (hasHue) {
            hue.keepSearched(regions.hues(), regions.reds(), when);
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
