package dev.lampwright.guard;

/**
 * What is seen of every light by itself, by the measures of WCAG 2.2, "general flash and red flash thresholds". Redness is judged light by
 * light, before anything is added up, so that white next to flashing red hides nothing.
 */
final class LightMeasure {
    /** Relative luminance of full white: the sum of the weights times {@link LightReader#FULL}. */
    static final long FULL_LUMINANCE = 10_000L * LightReader.FULL;
    /** Steps of redness: (R − G − B) × 320 must change by more than 20. */
    static final long REDNESS_PER_STEP = 320 / 20;

    /** Weights of red, green and blue in relative luminance, in 1/10000. Source: WCAG 2.2, "relative luminance". */
    private static final long RED = 2126;

    private static final long GREEN = 7152;
    private static final long BLUE = 722;

    /**
     * The number of looks after which a light that is no longer red counts as far from red: many seconds, however often a frame is
     * evaluated.
     */
    private static final int RECENT = 1 << 16;

    private final long[] luminance;
    private final long[] redness;
    private final long[] hue;
    private final boolean[] saturatedRed;
    private final int[] lastRed;
    private final long[] luminanceBefore;
    private final long[] rednessBefore;
    private final int[] redsBefore;
    private int looks;

    private LightMeasure(int lights, int looks) {
        this.looks = looks;
        luminance = new long[lights];
        redness = new long[lights];
        hue = new long[lights];
        saturatedRed = new boolean[lights];
        lastRed = new int[lights];
        luminanceBefore = new long[lights + 1];
        rednessBefore = new long[lights + 1];
        redsBefore = new int[lights + 1];
    }

    /** Measures lights frame after frame, none of them red so far. */
    static LightMeasure ofFrames(int lights) {
        return new LightMeasure(lights, RECENT);
    }

    /** Measures lights one by one. */
    static LightMeasure ofSingleLights(int lights) {
        return new LightMeasure(lights, 0);
    }

    /**
     * Looks at every light.
     *
     * @param lights the lights of a frame
     */
    void look(LightReader lights) {
        looks++;
        long luminanceSum = 0;
        long rednessSum = 0;
        int reds = 0;
        for (int light = 0; light < luminance.length; light++) {
            look(light, lights.red(light), lights.green(light), lights.blue(light));
            luminanceSum += luminance[light];
            rednessSum += redness[light];
            reds += saturatedRed[light] ? 1 : 0;
            luminanceBefore[light + 1] = luminanceSum;
            rednessBefore[light + 1] = rednessSum;
            redsBefore[light + 1] = reds;
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
        luminance[light] = RED * red + GREEN * green + BLUE * blue;
        redness[light] = Math.max(0, red - green - blue);
        int all = red + green + blue;
        boolean isRed = red > 0 && 5 * red >= 4 * all;
        saturatedRed[light] = isRed;
        hue[light] = hue(light, isRed, red, green, blue);
    }

    /**
     * A colour darker than the step of redness counts as having no hue; our own choice. Two kinds count as far from red without a
     * calculation: a colour with half red or less, because it always is, and one that has not been red recently, because only a change to
     * or from red counts.
     */
    private int hue(int light, boolean isRed, int red, int green, int blue) {
        if (REDNESS_PER_STEP * (red + green + blue) <= LightReader.FULL) {
            return RedDistance.UNCERTAIN;
        }
        if (isRed) {
            lastRed[light] = looks;
            return RedDistance.RED;
        }
        boolean surelyFar = red <= green + blue || looks - lastRed[light] >= RECENT;
        return surelyFar ? RedDistance.FAR : RedDistance.of(red, green, blue);
    }

    /** Sum of the luminance of lights that {@link #look(LightReader)} has seen, from one up to but excluding another. */
    long luminance(int from, int to) {
        return luminanceBefore[to] - luminanceBefore[from];
    }

    /** Sum of their redness. */
    long redness(int from, int to) {
        return rednessBefore[to] - rednessBefore[from];
    }

    /** Whether any light is saturated red. */
    boolean isAnyRed(int from, int to) {
        return redsBefore[to] > redsBefore[from];
    }

    /** Relative luminance of a light, 0 to {@link #FULL_LUMINANCE}; twice as much for white and colours together. */
    long luminance(int light) {
        return luminance[light];
    }

    /** R − G − B of a light; 0 if negative. */
    long redness(int light) {
        return redness[light];
    }

    /** Whether a light is saturated red, or far from it: one of the constants of {@link RedDistance}. */
    long hue(int light) {
        return hue[light];
    }

    /** {@link #redness(int)} of each light; must not be written to. */
    long[] rednesses() {
        return redness;
    }

    /** {@link #hue} of each light; must not be written to. */
    long[] hues() {
        return hue;
    }

    /** {@link #isSaturatedRed} of each light; must not be written to. */
    boolean[] reds() {
        return saturatedRed;
    }

    /** Whether R ÷ (R + G + B) of a light is 0.8 or more; false in the dark. */
    boolean isSaturatedRed(int light) {
        return saturatedRed[light];
    }
}
