package dev.lampwright.guard;

import java.util.Arrays;

/**
 * Regions of one kind, each a set of lights that are judged together. The light of a region is the weighted sum over its lights. What a
 * region has shown is traced from frame to frame.
 */
abstract class Regions {
    /** The hue of several lights together: none, because hue is judged light by light only. */
    static final long NO_HUE = 0;

    private final long[] luminance;
    private long[] redness;
    private long[] hue;
    private boolean[] red;
    private final boolean[] always;
    private final long brightest;
    private final long weight;
    private final Flicker shown;

    /**
     * Creates regions that have shown nothing.
     *
     * @param count how many
     * @param weight sum of the weights of the lights in each, 1 or more
     * @param depth how many transitions of each are remembered, see {@link Traces}
     * @throws IllegalArgumentException if the weight is below 1
     */
    Regions(int count, long weight, int depth) {
        if (weight < 1) {
            throw new IllegalArgumentException("regions of weight " + weight);
        }
        luminance = new long[count];
        redness = new long[count];
        hue = new long[count];
        red = new boolean[count];
        always = new boolean[count];
        Arrays.fill(always, true);
        brightest = 9 * Flicker.luminanceStep(weight) - 1;
        this.weight = weight;
        shown = new Flicker(count, weight, depth);
    }

    /** The combined light of one region. */
    static final class Sum {
        private long luminance;
        private long redness;
        private long hue;
        private int reds;

        /** Relative luminance; for a region at most just under 0.9 of full. */
        long luminance() {
            return luminance;
        }

        /** R − G − B, where positive. */
        long redness() {
            return redness;
        }

        /** Hues, see {@link RedDistance}. */
        long hue() {
            return hue;
        }

        /** Whether any light is saturated red. */
        boolean isRed() {
            return reds > 0;
        }

        void clear() {
            luminance = 0;
            redness = 0;
            hue = 0;
            reds = 0;
        }

        void add(LightMeasure lights, int light, long weight) {
            luminance += weight * lights.luminance(light);
            redness += weight * lights.redness(light);
            hue += weight * lights.hue(light);
            reds += lights.isSaturatedRed(light) ? 1 : 0;
        }
    }

    /** How many lights a region has. */
    abstract int size(int region);

    /** One of a region's lights, from 0 to {@link #size} − 1. */
    abstract int light(int region, int index);

    /** The weight of one of a region's lights. */
    long weight(int index) {
        return 1;
    }

    /** Evaluates all regions. */
    abstract void look(LightMeasure lights);

    /** Sums the light of one region without recording it. */
    final void add(int region, LightMeasure lights, Sum result) {
        result.clear();
        for (int i = 0; i < size(region); i++) {
            result.add(lights, light(region, i), weight(i));
        }
        result.luminance = cutOff(result.luminance);
    }

    /** Records the light of a region now. */
    final void see(int region, long luminanceSum, long rednessSum, long hueSum, boolean anyRed) {
        luminance[region] = cutOff(luminanceSum);
        redness[region] = rednessSum;
        hue[region] = hueSum;
        red[region] = anyRed;
    }

    /** Records the light of all regions now, if each is one light. */
    final void seeLights(LightMeasure lights) {
        for (int region = 0; region < luminance.length; region++) {
            luminance[region] = cutOff(lights.luminance(region));
        }
        redness = lights.rednesses();
        hue = lights.hues();
        red = lights.reds();
    }

    /** Just under 0.9: so a fall of 10 % counts only if it ends below 0.8, as the standard says. */
    private long cutOff(long luminanceSum) {
        return Math.min(luminanceSum, brightest);
    }

    /** Relative luminance of each region; must not be written to. */
    final long[] luminances() {
        return luminance;
    }

    /** Redness of each region; must not be written to. */
    final long[] rednesses() {
        return redness;
    }

    /** Hue of each region; must not be written to. */
    final long[] hues() {
        return hue;
    }

    /** Whether any light of each region is saturated red; must not be written to. */
    final boolean[] reds() {
        return red;
    }

    /** True for each region: every change of luminance counts. Must not be written to. */
    final boolean[] always() {
        return always;
    }

    /** How many regions there are. */
    final int count() {
        return luminance.length;
    }

    /** Relative luminance of a region, as last evaluated. */
    final long luminance(int region) {
        return luminance[region];
    }

    /** Redness of a region, as last evaluated. */
    final long redness(int region) {
        return redness[region];
    }

    /** Hues of a region, as last evaluated. */
    final long hue(int region) {
        return hue[region];
    }

    /** Whether any light of a region was saturated red when last evaluated. */
    final boolean isRed(int region) {
        return red[region];
    }

    /** How what has been shown flickers. */
    final Flicker shown() {
        return shown;
    }

    /** Another flicker for equally many regions, without a past. */
    final Flicker flicker(int depth) {
        return new Flicker(count(), weight, depth);
    }
}
