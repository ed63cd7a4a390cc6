package dev.lampwright.guard;

/** Each light by itself: every pixel, every lamp, and every plain colour strip. */
final class SingleLights extends Regions {
    /**
     * Creates them.
     *
     * @param lights how many lights there are
     * @param depth how many transitions of each are remembered, see {@link Traces}
     */
    SingleLights(int lights, int depth) {
        super(lights, 1, depth);
    }

    @Override
    int size(int region) {
        return 1;
    }

    @Override
    int light(int region, int index) {
        return region;
    }

    @Override
    void look(LightMeasure lights) {
        seeLights(lights);
    }
}
