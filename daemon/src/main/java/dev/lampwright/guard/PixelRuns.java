package dev.lampwright.guard;

/**
 * Each run of eight neighbouring pixels, wherever it starts. How long a run is, is our own choice: at 60 pixels a metre it is 13 cm, and one
 * pixel of it is more than the 10 % that count.
 */
final class PixelRuns extends Regions {
    /** Pixels in a run. */
    static final int LENGTH = 8;

    private final Sum sum = new Sum();
    private final int pixels;

    /**
     * Makes the runs of a strip.
     *
     * @param pixels pixels of the strip; one that is shorter than a run has none
     * @param depth how many transitions of each are remembered, see {@link Traces}
     */
    PixelRuns(int pixels, int depth) {
        super(Math.max(0, pixels - LENGTH + 1), LENGTH, depth);
        this.pixels = pixels;
    }

    @Override
    int size(int region) {
        return LENGTH;
    }

    @Override
    int light(int region, int index) {
        return region + index;
    }

    /** Each sum is the one before, with a pixel more at one end and a pixel less at the other. */
    @Override
    void look(LightMeasure lights) {
        sum.clear();
        for (int pixel = 0; pixel < pixels; pixel++) {
            sum.add(lights, pixel, 1);
            int run = pixel - LENGTH + 1;
            if (run >= 0) {
                see(run, sum);
                sum.remove(lights, run);
            }
        }
    }
}
