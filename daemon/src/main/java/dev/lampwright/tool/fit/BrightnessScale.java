package dev.lampwright.tool.fit;

/** Brightness steps that look equal. Source: CIE 1976 lightness, CIE 15: L* = 116 (Y/Yn)^(1/3) − 16, and L* = (29/3)³ Y/Yn below L* = 8. */
final class BrightnessScale {
    /** How many steps there are; the last is full light. */
    static final int STEPS = 20;

    private static final double FULL = 100;
    private static final double LINEAR_BELOW = 8;
    private static final double SLOPE = Math.pow(29.0 / 3, 3);
    private static final double LEVELS = 255;

    private BrightnessScale() {}

    /**
     * The light of a step.
     *
     * @param step 1 to {@link #STEPS}
     * @return share of full light, 0 to 1
     */
    static double share(int step) {
        double lightness = FULL * step / STEPS;
        return lightness < LINEAR_BELOW ? lightness / SLOPE : Math.pow((lightness + 16) / 116, 3);
    }

    /**
     * The highest step that a level reaches.
     *
     * @param level 0 to 255
     * @return 1 to {@link #STEPS}
     */
    static int highest(int level) {
        int step = STEPS;
        while (step > 1 && Math.round(share(step) * LEVELS) > level) {
            step--;
        }
        return step;
    }
}
