package dev.lampwright.guard;

/**
 * Lights that are judged together, by their mean. A region is free, held, or on its way back from having been held. It is held until the
 * light that is wanted has kept the limit for a second, and then goes back to it evenly over another.
 */
final class Region {
    /** The share of the wanted light that a free region shows. */
    static final int FREE = 1 << 16;

    /** Our own choice: as long as the second over which flashes are counted. */
    private static final long CALM_NANOS = 1_000_000_000L;

    private final int[] lights;
    private final FlashMeasure sight;
    private final Flicker wanted;
    private final Flicker shown;
    private final int step;
    private int share = FREE;
    private long overAt;

    /**
     * Makes a free region.
     *
     * @param lights which lights, 1 or more
     * @param window the last second
     * @param framesPerSecond rate of the frames
     */
    Region(int[] lights, Window window, int framesPerSecond) {
        this.lights = lights;
        sight = new FlashMeasure(lights.length);
        wanted = new Flicker(window, sight);
        shown = new Flicker(window, sight);
        step = Math.max(1, FREE / framesPerSecond);
    }

    /** How many lights it has. */
    int size() {
        return lights.length;
    }

    /** One of its lights, from 0 to {@link #size} − 1. */
    int light(int index) {
        return lights[index];
    }

    /** How much of the wanted light it shows: 0 while it is held, {@link #FREE} if it is free. */
    int share() {
        return share;
    }

    /** Holds the region, because of a frame of that time. */
    void hold(long nanos) {
        share = 0;
        overAt = nanos;
    }

    /**
     * Looks at light.
     *
     * @param all the lights of a frame
     */
    void look(LightReader all) {
        long red = 0;
        long green = 0;
        long blue = 0;
        for (int light : lights) {
            red += all.red(light);
            green += all.green(light);
            blue += all.blue(light);
        }
        sight.look(red, green, blue);
    }

    /** Whether the light it looks at, if it were shown next, would break the limit. */
    boolean breaks() {
        return !shown.admits(sight);
    }

    /** Keeps the light it looks at as what is shown. */
    void keepShown() {
        shown.keep(sight);
    }

    /**
     * Keeps the light it looks at as what is wanted, and goes a step on its way back if that has been calm for long enough.
     *
     * @param nanos the time of the frame
     * @return true if the region is not free, and the wanted light breaks the limit
     */
    boolean keepWanted(long nanos) {
        boolean over = share < FREE && !wanted.isWithin(sight);
        wanted.keep(sight);
        if (!over && nanos - overAt >= CALM_NANOS) {
            share = Math.min(FREE, share + step);
        }
        return over;
    }
}
