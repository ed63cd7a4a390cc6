package dev.lampwright.guard;

/**
 * What is seen of every light by itself, by the measures of WCAG 2.2, "general flash and red flash thresholds". Redness is judged light by
 * light, before anything is added up, so that white beside a red that flashes hides nothing.
 */
final class LightMeasure {
    /** Relative luminance of full white: the sum of the {@linkplain #WEIGHTS weights} times {@link LightReader#FULL}. */
    static final long FULL_LUMINANCE = 10_000L * LightReader.FULL;
    /** Steps of redness: (R − G − B) × 320 has to change by more than 20. */
    static final long REDNESS_PER_STEP = 320 / 20;

    /** Weights of red, green and blue in relative luminance, in 1/10000. Source: WCAG 2.2, "relative luminance". */
    private static final long[] WEIGHTS = {2126, 7152, 722};

    private final long[] luminance;
    private final int[] redness;
    private final byte[] hue;
    private final boolean[] saturatedRed;

    /**
     * Makes measures of lights that are all dark.
     *
     * @param lights how many lights
     */
    LightMeasure(int lights) {
        luminance = new long[lights];
        redness = new int[lights];
        hue = new byte[lights];
        saturatedRed = new boolean[lights];
    }

    /**
     * Looks at every light.
     *
     * @param lights the lights of a frame
     */
    void look(LightReader lights) {
        for (int light = 0; light < luminance.length; light++) {
            look(light, lights.red(light), lights.green(light), lights.blue(light));
        }
    }

    /**
     * Looks at one light.
     *
     * @param light which
     * @param lights the lights of a frame
     */
    void look(int light, LightReader lights) {
        look(light, lights.red(light), lights.green(light), lights.blue(light));
    }

    private void look(int light, int red, int green, int blue) {
        luminance[light] = WEIGHTS[0] * red + WEIGHTS[1] * green + WEIGHTS[2] * blue;
        redness[light] = Math.max(0, red - green - blue);
        int all = red + green + blue;
        boolean isRed = red > 0 && 5 * red >= 4 * all;
        saturatedRed[light] = isRed;
        hue[light] = (byte) hue(isRed, red, green, blue);
    }

    /** A colour darker than the step of redness has no hue to speak of; that is our own choice. */
    private static int hue(boolean isRed, int red, int green, int blue) {
        if (REDNESS_PER_STEP * (red + green + blue) <= LightReader.FULL) {
            return RedDistance.UNCERTAIN;
        }
        return isRed ? RedDistance.RED : RedDistance.of(red, green, blue);
    }

    /** Relative luminance of a light, 0 to {@link #FULL_LUMINANCE}; twice as much for white and colours together. */
    long luminance(int light) {
        return luminance[light];
    }

    /** R − G − B of a light, negative as 0. */
    int redness(int light) {
        return redness[light];
    }

    /** Whether a light is saturated red, or far from it: one of the constants of {@link RedDistance}. */
    int hue(int light) {
        return hue[light];
    }

    /** Whether R ÷ (R + G + B) of a light is 0.8 or more; false in the dark. */
    boolean isSaturatedRed(int light) {
        return saturatedRed[light];
    }
}
