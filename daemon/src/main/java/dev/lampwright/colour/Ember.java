package dev.lampwright.colour;

/**
 * The glow of a cooling body: its colour, and a brightness that falls with its temperature as steeply as it really does. Uses a table, so
 * that lookups are cheap and allocate nothing.
 */
public final class Ember {
    private static final int PARTS = 512;
    private static final int COLOURS = 3;

    private final double brightestK;
    private final double partsPerK;
    /** One entry for each part, one for the end, and one after it, which is never used. */
    private final float[] table = new float[COLOURS * (PARTS + 2)];

    /**
     * The last one created: a table takes about 10 ms, and a configuration usually has one kind of fire, in looks that are created
     * repeatedly.
     */
    private static volatile Ember lastMade;

    /**
     * A glow.
     *
     * @param brightestK temperature at which it is as bright as can be shown, in K, above {@link BlackBody#COLDEST_K} and up to
     *     {@link BlackBody#HOTTEST_K}; 1600 leaves a visible range of about 400 K
     * @return the glow, which never changes
     * @throws IllegalArgumentException if the temperature is outside
     */
    public static Ember of(double brightestK) {
        Ember last = lastMade;
        if (last != null && last.brightestK == brightestK) {
            return last;
        }
        Ember made = new Ember(brightestK);
        lastMade = made;
        return made;
    }

    private Ember(double brightestK) {
        if (!(brightestK > BlackBody.COLDEST_K)) {
            throw new IllegalArgumentException(
                    "nothing glows at " + brightestK + " K; take more than " + BlackBody.COLDEST_K + " K");
        }
        this.brightestK = brightestK;
        partsPerK = PARTS / (brightestK - BlackBody.COLDEST_K);
        double full = BlackBody.light(brightestK).luminance() / BlackBody.luminance(brightestK);
        for (int i = 0; i <= PARTS; i++) {
            fill(i, full);
        }
    }

    private void fill(int entry, double full) {
        double kelvin = BlackBody.COLDEST_K + (brightestK - BlackBody.COLDEST_K) * entry / PARTS;
        Light light = BlackBody.light(kelvin);
        float factor = (float) (BlackBody.luminance(kelvin) * full / light.luminance());
        table[COLOURS * entry] = light.red() * factor;
        table[COLOURS * entry + 1] = light.green() * factor;
        table[COLOURS * entry + 2] = light.blue() * factor;
    }

    /**
     * Moves a colour towards that of a temperature.
     *
     * @param kelvin temperature; above the brightest it counts as the brightest, below {@link BlackBody#COLDEST_K} (and NaN) as that
     * @param share how much of the way, 0 to 1
     * @param rgb linear red, green and blue, 0 to 1, which are changed
     * @param at index of red
     */
    public void approach(double kelvin, float share, float[] rgb, int at) {
        float exact = (float) ((kelvin - BlackBody.COLDEST_K) * partsPerK);
        float place = exact > 0 ? (exact < PARTS ? exact : PARTS) : 0;
        int entry = (int) place;
        float rest = place - entry;
        int here = COLOURS * entry;
        rgb[at] += (table[here] + (table[here + COLOURS] - table[here]) * rest - rgb[at]) * share;
        rgb[at + 1] += (table[here + 1] + (table[here + COLOURS + 1] - table[here + 1]) * rest - rgb[at + 1]) * share;
        rgb[at + 2] += (table[here + 2] + (table[here + COLOURS + 2] - table[here + 2]) * rest - rgb[at + 2]) * share;
    }
}
