package dev.lampwright.guard;

/** How regions flicker: their general flashes, and their red flashes by both definitions of the standard. */
final class Flicker {
    private final Traces general;
    private final Traces red;
    private final Traces hue;
    private final boolean hasHue;

    /**
     * Creates one without a past.
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

    /** The smallest change of luminance that is a transition: 10 % of the maximum relative luminance. */
    static long luminanceStep(long weight) {
        return LightMeasure.FULL_LUMINANCE / 10 * weight;
    }

    /**
     * The smallest change of redness that is a transition: more than 20 of 320, so the smallest sum above a sixteenth of full red. Source:
     * WCAG 2.0 and 2.1, working definition of a pair of opposing transitions involving a saturated red.
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

    /** Starts a search for moves through all regions. */
    void beginSearch() {
        general.beginSearch();
        red.beginSearch();
        hue.beginSearch();
    }

    /**
     * The first region, from a given one on, whose light would be more than a continuation.
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

    /** Records the light of a region at a time, or in the frame with that number. */
    void keep(Regions regions, int region, long when) {
        boolean isRed = regions.isRed(region);
        general.keep(region, regions.luminance(region), true, when);
        red.keep(region, regions.redness(region), isRed, when);
        if (hasHue) {
            hue.keep(region, regions.hue(region), isRed, when);
        }
    }

    /** Records the light of all regions in a frame, with or without red. */
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

    /** The same after a search through all regions, if its result changed nothing. */
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

    /** The maximum number of transitions of one kind that a region had after a time, or after the frame with that number. */
    int transitionsAfter(int region, long when) {
        int ofLuminance = general.transitionsAfter(region, when);
        int ofRed = Math.max(red.transitionsAfter(region, when), hue.transitionsAfter(region, when));
        return Math.max(ofLuminance, ofRed);
    }

    /** Forgets everything about a region. */
    void restart(int region) {
        general.restart(region);
        red.restart(region);
        hue.restart(region);
    }
}
