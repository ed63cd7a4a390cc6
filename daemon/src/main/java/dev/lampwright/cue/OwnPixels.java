package dev.lampwright.cue;

import java.util.Arrays;

/**
 * Individually set pixels, drawn over the light of the looks. They change in one frame, or fade from what is shown to what is wanted.
 * Allocates nothing after construction; for one thread.
 */
final class OwnPixels {
    private static final float[] NONE = {};

    /** For each pixel here, its place among the wished-for pixels. */
    private final int[] places;

    private final int wishedFloats;

    /** The wanted light: premultiplied, red NaN where the look shows; empty if it shows everywhere. */
    private float[] wanted = NONE;
    /** The light drawn, already multiplied with its share. */
    private final float[] light;
    /** How much of the look is hidden, for each pixel. */
    private final float[] share;

    private final float[] lightBefore;
    private final float[] shareBefore;
    private float faded = 1;
    /** How long the fade has lasted, and how long it takes, in s. */
    private double gone;

    private double whole;

    /**
     * Starts without any pixels set.
     *
     * @param places for each pixel of the canvas, its place among the wished-for pixels
     * @param wished how many wished-for pixels there are
     */
    OwnPixels(int[] places, int wished) {
        this.places = places.clone();
        wishedFloats = 4 * wished;
        int floats = 4 * places.length;
        light = new float[floats];
        lightBefore = new float[floats];
        share = new float[floats / 4];
        shareBefore = new float[floats / 4];
    }

    /**
     * Advances by a frame.
     *
     * @param pixels what is wanted, as in {@link Wish#PIXELS}; has no effect if it is for another canvas
     * @param fadeSeconds how long that takes if it is new; NaN or 0 for one frame
     * @param seconds since the previous frame
     */
    void follow(float[] pixels, float fadeSeconds, float seconds) {
        float[] next = pixels.length == wishedFloats ? pixels : NONE;
        if (next != wanted && !Arrays.equals(next, wanted)) {
            System.arraycopy(light, 0, lightBefore, 0, light.length);
            System.arraycopy(share, 0, shareBefore, 0, share.length);
            gone = 0;
            whole = Float.isNaN(fadeSeconds) ? 0 : fadeSeconds;
            faded = 0;
        }
        wanted = next;
        if (faded < 1) {
            gone += seconds;
            faded = gone < whole ? (float) (gone / whole) : 1;
            for (int i = 0; i < share.length; i++) {
                mix(i);
            }
        }
    }

    private void mix(int pixel) {
        int at = 4 * pixel;
        int from = 4 * places[pixel];
        boolean own = wanted.length > 0 && !Float.isNaN(wanted[from]);
        share[pixel] = shareBefore[pixel] + ((own ? 1 : 0) - shareBefore[pixel]) * faded;
        for (int i = 0; i < 4; i++) {
            float before = lightBefore[at + i];
            light[at + i] = before + ((own ? wanted[from + i] : 0) - before) * faded;
        }
    }

    /** Draws them over the light of the looks. */
    void layOver(float[] rgba) {
        if (faded == 1 && wanted.length == 0) {
            return;
        }
        for (int pixel = 0; pixel < share.length; pixel++) {
            float left = 1 - share[pixel];
            if (left < 1) {
                for (int i = 4 * pixel; i < 4 * pixel + 4; i++) {
                    rgba[i] = rgba[i] * left + light[i];
                }
            }
        }
    }

    /** Whether the wanted light is fully shown. */
    boolean isSettled() {
        return faded == 1;
    }

    /** Continues from where another is, if that is for a canvas of the same size. */
    void takeOver(OwnPixels before) {
        if (wishedFloats == before.wishedFloats && Arrays.equals(places, before.places)) {
            wanted = before.wanted;
            System.arraycopy(before.light, 0, light, 0, light.length);
            System.arraycopy(before.share, 0, share, 0, share.length);
            System.arraycopy(before.lightBefore, 0, lightBefore, 0, light.length);
            System.arraycopy(before.shareBefore, 0, shareBefore, 0, share.length);
            faded = before.faded;
            gone = before.gone;
            whole = before.whole;
        }
    }
}
