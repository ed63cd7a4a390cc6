package dev.lampwright.look;

import java.util.Arrays;

/** The light of one frame before it becomes bytes: the whole strip, pixel 0 first, and the dimmers. */
public final class Canvas {
    private final float[] rgba;
    private final float[] dimmers;

    /**
     * Makes a dark canvas.
     *
     * @param pixels pixels of the strip
     * @param dimmers dimmers in use
     */
    public Canvas(int pixels, int dimmers) {
        rgba = new float[4 * pixels];
        this.dimmers = new float[dimmers];
    }

    /**
     * The strip's light.
     *
     * @return premultiplied linear light, four floats a pixel; the same array each time
     */
    public float[] rgba() {
        return rgba;
    }

    /**
     * The dimmers' light.
     *
     * @return 0 to 1 for each; the same array each time
     */
    public float[] dimmers() {
        return dimmers;
    }

    /** Makes everything dark. */
    public void clear() {
        Arrays.fill(rgba, 0);
        Arrays.fill(dimmers, 0);
    }

    /**
     * Takes another canvas's light.
     *
     * @param other a canvas of the same size
     */
    public void copyFrom(Canvas other) {
        System.arraycopy(other.rgba, 0, rgba, 0, rgba.length);
        System.arraycopy(other.dimmers, 0, dimmers, 0, dimmers.length);
    }

    /**
     * Mixes another canvas in, in linear light.
     *
     * @param other a canvas of the same size
     * @param share how much of the other, 0 to 1
     */
    public void mix(Canvas other, float share) {
        mix(rgba, other.rgba, share);
        mix(dimmers, other.dimmers, share);
    }

    private static void mix(float[] here, float[] there, float share) {
        for (int i = 0; i < here.length; i++) {
            here[i] += (there[i] - here[i]) * share;
        }
    }
}
