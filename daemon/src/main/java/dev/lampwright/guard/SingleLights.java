package dev.lampwright.guard;

/** Each light by itself: every pixel, every lamp, and every plain colour strip. */
final class SingleLights extends Regions {
    /**
     * Makes them.
     *
     * @param lights how many lights there are
     * @param framesPerSecond rate of the frames
     */
    SingleLights(int lights, int framesPerSecond) {
        super(lights, 1, framesPerSecond);
    }

    @Override
    int size(int region) {
        return 1;
    }

    @Override
    int light(int region, int index) {
        return region;
    }
}
