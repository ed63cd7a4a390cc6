package dev.lampwright.colour;

import java.util.concurrent.atomic.AtomicReference;

/**
 * The glow of a body that cools: its colour, and a brightness that falls with its temperature as steeply as it really does. A table,
 * so that looking up costs little and allocates nothing.
 */
public final class Ember {
    private static final int PARTS = 512;

    private final double brightestK;
    private final double partsPerK;
    private final float[] table = new float[3 * (PARTS + 1)];

    /** The one that was made last: a table takes some 10 ms, and a configuration has one kind of fire, in looks that are made again and again. */
    private static final AtomicReference<Ember> LAST = new AtomicReference<>();

    /**
     * A glow.
     *
     * @param brightestK temperature at which it is as bright as can be shown, in K, above {@link BlackBody#COLDEST_K} and up to
     *     {@link BlackBody#HOTTEST_K}; 1600 leaves about 400 K of it to be seen
     * @return the glow, which never changes
     * @throws IllegalArgumentException if the temperature is outside
     */
    public static Ember of(double brightestK) {
        Ember last = LAST.get();
        if (last != null && last.brightestK == brightestK) {
            return last;
        }
        Ember made = new Ember(brightestK);
        LAST.set(made);
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
        table[3 * entry] = light.red() * factor;
        table[3 * entry + 1] = light.green() * factor;
        table[3 * entry + 2] = light.blue() * factor;
    }

    /**
     * Looks a colour up.
     *
     * @param kelvin temperature; above the brightest it counts as that, below {@link BlackBody#COLDEST_K} (and NaN) as that
     * @param rgb where to write linear red, green and blue, 0 to 1
     * @param at index of red
     */
    public void colour(double kelvin, float[] rgb, int at) {
        float exact = (float) ((kelvin - BlackBody.COLDEST_K) * partsPerK);
        float place = exact > 0 ? (exact < PARTS ? exact : PARTS) : 0;
        int entry = Math.min((int) place, PARTS - 1);
        float rest = place - entry;
        for (int i = 0; i < 3; i++) {
            float here = table[3 * entry + i];
            rgb[at + i] = here + (table[3 * entry + 3 + i] - here) * rest;
        }
    }
}
