package dev.lampwright.guard;

/**
 * What is seen of some lights taken together, by the measures of WCAG 2.x, "general flash and red flash thresholds". Whole numbers; all but
 * {@link #hue} grow with the number of lights.
 */
final class FlashMeasure {
    /** Weights of red, green and blue in relative luminance, in 1/10000. Source: WCAG 2.x, "relative luminance". */
    private static final long[] WEIGHTS = {2126, 7152, 722};

    private static final long FULL = 10_000L * LightReader.FULL;
    /** Steps of redness: (R − G − B) × 320 has to change by more than 20. */
    private static final long REDNESS_PER_STEP = 320 / 20;

    private final int lights;
    private final long brightest;
    private long luminance;
    private long redness;
    private int hue;
    private boolean saturatedRed;

    /**
     * Makes one that sees nothing.
     *
     * @param lights how many lights are taken together, 1 or more
     * @throws IllegalArgumentException if it is less
     */
    FlashMeasure(int lights) {
        if (lights < 1) {
            throw new IllegalArgumentException("a region of " + lights + " lights");
        }
        this.lights = lights;
        brightest = 9 * luminanceStep() - 1;
    }

    /**
     * The least change of {@link #luminance} that is a transition: 10 % of the maximum relative luminance.
     *
     * @return a tenth of what full white sums up to
     */
    long luminanceStep() {
        return FULL / 10 * lights;
    }

    /**
     * The least change of {@link #redness} that is a transition: more than 20 of 320. Source: WCAG 2.0 and 2.1, working definition of a
     * pair of opposing transitions involving a saturated red.
     *
     * @return the least sum above a sixteenth of full red
     */
    long rednessStep() {
        return (long) LightReader.FULL * lights / REDNESS_PER_STEP + 1;
    }

    /**
     * Looks at light.
     *
     * @param red sum of the lights' red, 65535 each
     * @param green sum of the lights' green
     * @param blue sum of the lights' blue
     */
    void look(long red, long green, long blue) {
        luminance = WEIGHTS[0] * red + WEIGHTS[1] * green + WEIGHTS[2] * blue;
        redness = Math.max(0, red - green - blue);
        saturatedRed = red > 0 && 5 * red >= 4 * (red + green + blue);
        hue = hue(red, green, blue);
    }

    /**
     * Relative luminance, cut off just under 0.9. So a fall of 10 % is one only if it ends below 0.8, as the standard has it.
     *
     * @return sum over the lights
     */
    long luminance() {
        return Math.min(luminance, brightest);
    }

    /**
     * R − G − B, negative as 0.
     *
     * @return sum over the lights
     */
    long redness() {
        return redness;
    }

    /**
     * Whether the light is saturated red, or far from it.
     *
     * @return one of the constants of {@link RedDistance}
     */
    int hue() {
        return hue;
    }

    /**
     * Whether R ÷ (R + G + B) is 0.8 or more.
     *
     * @return false in the dark
     */
    boolean isSaturatedRed() {
        return saturatedRed;
    }

    /** A colour darker than the step of redness has no hue to speak of; that is our own choice. */
    private int hue(long red, long green, long blue) {
        if (REDNESS_PER_STEP * (red + green + blue) <= (long) LightReader.FULL * lights) {
            return RedDistance.UNCERTAIN;
        }
        return saturatedRed ? RedDistance.RED : RedDistance.of((double) red, (double) green, (double) blue);
    }
}
