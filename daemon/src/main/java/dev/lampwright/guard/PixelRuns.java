package dev.lampwright.guard;

/**
 * Each run of eight neighbouring pixels, wherever it starts. The length of a run is our own choice: at 60 pixels per metre it is 13 cm, and
 * one pixel of it is more than the 10 % that count.
 */
final class PixelRuns extends Regions {
    /** Pixels in a run. */
    static final int LENGTH = 8;

    /**
     * Creates the runs of a strip.
     *
     * @param pixels pixels of the strip; one that is shorter than a run has none
     * @param depth how many transitions of each are remembered, see {@link Traces}
     */
    PixelRuns(int pixels, int depth) {
        super(Math.max(0, pixels - LENGTH + 1), LENGTH, depth);
    }

    @Override
    int size(int region) {
        return LENGTH;
    }

    @Override
    int light(int region, int index) {
        return region + index;
    }

    @Override
    void look(LightMeasure lights) {
        for (int run = 0; run < count(); run++) {
            int end = run + LENGTH;
            see(run, lights.luminance(run, end), lights.redness(run, end), NO_HUE, lights.isAnyRed(run, end));
        }
    }
}
